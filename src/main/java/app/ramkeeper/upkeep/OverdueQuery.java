package app.ramkeeper.upkeep;

import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads what is overdue, whose it is, who was last there, and how often a visit passed it by. */
@Repository
class OverdueQuery {

    static final int MOST = 300;

    private final JdbcClient jdbc;
    private final Clock clock;

    OverdueQuery(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * An overdue task.
     *
     * @param passedBy visits of ours at the install since it fell due that left it undone
     * @param delivered the last delivered flow in m3/s, with its day; comparable or not
     * @param baseline delivered flow of the baseline in force, m3/s
     */
    public record Row(
            UUID taskId,
            UUID installId,
            UUID siteId,
            String install,
            String site,
            @Nullable String depot,
            String kind,
            LocalDate dueOn,
            @Nullable LocalDate from,
            LocalDate windowUntil,
            String waiting,
            @Nullable LocalDate waitingSince,
            @Nullable String waitingNote,
            @Nullable LocalDate lastVisit,
            @Nullable String lastWho,
            int passedBy,
            @Nullable Double delivered,
            @Nullable LocalDate deliveredOn,
            @Nullable Double baseline) {

        public @Nullable Double change() {
            return delivered == null || baseline == null || baseline == 0 ? null : delivered / baseline - 1;
        }
    }

    /** How many are overdue at a depot, by how long. */
    public record Band(@Nullable String depot, long month, long quarter, long half, long longer) {
        public long all() {
            return month + quarter + half + longer;
        }
    }

    List<Row> rows(@Nullable UUID kind, @Nullable UUID depot, @Nullable String waiting) {
        Map<String, Object> parameters = new HashMap<>();
        String where = where(kind, depot, waiting, parameters);
        return jdbc.sql("""
                        with late as (select t.* from service_tasks t join task_kinds k on k.id = t.task_kind_id
                          %s where %s order by t.due_on, t.id limit %d)
                        select t.id as task_id, t.install_id, s.id as site_id, i.name as install, s.name as site, d.name as depot, k.name as kind,
                          t.due_on, coalesce(t.last_done_on, t.counting_from) as from, t.window_until, t.waiting, t.waiting_since, t.waiting_note,
                          l.attended_on as last_visit, l.who as last_who,
                          (select count(*)::int from current_reports r where r.site_id = s.id and r.attended_on > t.due_on and r.outcome <> 'COULD_NOT'
                             and exists (select from report_works w where w.report_id = r.id and w.install_id = t.install_id)) as passed_by,
                          q.value_si as delivered, q.attended_on as delivered_on, b.delivered_flow_si as baseline
                        from late t join task_kinds k on k.id = t.task_kind_id join installs i on i.id = t.install_id
                          join sites s on s.id = i.site_id left join depots d on d.id = s.depot_id
                          left join configurations c on c.install_id = t.install_id and c.until_date is null
                          left join baselines b on b.configuration_id = c.id
                          left join lateral (select r.attended_on, (select string_agg(p.name, ', ' order by rp.lead desc, p.name)
                              from report_people rp join people p on p.id = rp.person_id where rp.report_id = r.id) as who
                            from current_reports r where r.site_id = s.id order by r.attended_on desc, r.id limit 1) l on true
                          left join lateral (select x.value_si, r.attended_on from readings x join current_reports r on r.id = x.report_id
                            where x.install_id = t.install_id and x.quantity = 'DELIVERED_FLOW' and x.comparable order by r.attended_on desc limit 1) q on true
                        order by t.due_on, t.id""".formatted(
                        depot == null ? "" : "join installs i on i.id = t.install_id join sites s on s.id = i.site_id",
                        where,
                        MOST))
                .params(parameters)
                .query(Row.class)
                .list();
    }

    List<Band> bands(@Nullable UUID kind, @Nullable UUID depot, @Nullable String waiting) {
        Map<String, Object> parameters = new HashMap<>();
        String where = where(kind, depot, waiting, parameters);
        return jdbc.sql("""
                        select d.name as depot,
                          count(*) filter (where :today - t.due_on <= 30) as month,
                          count(*) filter (where :today - t.due_on between 31 and 90) as quarter,
                          count(*) filter (where :today - t.due_on between 91 and 180) as half,
                          count(*) filter (where :today - t.due_on > 180) as longer
                        from service_tasks t join task_kinds k on k.id = t.task_kind_id join installs i on i.id = t.install_id
                          join sites s on s.id = i.site_id left join depots d on d.id = s.depot_id
                        where %s group by d.name order by d.name nulls last""".replace(":today", "cast(:today as date)").formatted(where))
                .params(parameters)
                .query(Band.class)
                .list();
    }

    private String where(
            @Nullable UUID kind, @Nullable UUID depot, @Nullable String waiting, Map<String, Object> parameters) {
        parameters.put("today", LocalDate.now(clock));
        StringBuilder where = new StringBuilder(DueFilter.DueState.OVERDUE.condition());
        if (kind == null) {
            where.append(" and k.watched");
        } else {
            where.append(" and t.task_kind_id = :kind");
            parameters.put("kind", kind);
        }
        if (depot != null) {
            where.append(" and s.depot_id = :depot");
            parameters.put("depot", depot);
        }
        if (waiting != null) {
            where.append(" and t.waiting = :waiting");
            parameters.put("waiting", waiting);
        }
        return where.toString();
    }
}
