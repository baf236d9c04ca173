package app.ramkeeper.desk;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Slice;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the office must know first: who rang, who is not back, what must go into the week, what was promised. */
@Service
@ForOffice
@Transactional(readOnly = true)
class OfficeDesk {

    private final JdbcClient jdbc;
    private final Clock clock;

    OfficeDesk(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Somebody rang and it is not settled; the driest first. {@code dryAt} is when the water ends by what the caller said. */
    public record OpenCall(
            UUID id,
            Instant receivedAt,
            @Nullable String caller,
            String place,
            @Nullable UUID siteId,
            @Nullable Instant dryAt,
            boolean peopleDry,
            boolean stockDry,
            @Nullable Instant promisedBy,
            @Nullable LocalDate visitOn) {}

    /**
     * A site with tasks that must go into this week: overdue, or their window ends with it.
     *
     * @param sites how many sites there are in all, among the {@link Slice#CAP} tasks due longest
     */
    public record MustGo(
            UUID siteId,
            String site,
            @Nullable String locality,
            @Nullable String depot,
            String tasks,
            int count,
            LocalDate dueOn,
            @Nullable LocalDate from,
            @Nullable LocalDate plannedOn,
            long sites) {}

    /** Something that was promised and is not done. */
    public record Promise(UUID siteId, String site, String text, LocalDate dueOn) {}

    /** A technician's load on a day of this week. */
    public record DayLoad(String person, LocalDate day, int visits, int minutes) {}

    List<OpenCall> openCalls() {
        return jdbc.sql("""
                        select c.id, c.received_at, c.caller, coalesce(s.name, c.place_text) as place, c.site_id,
                          c.received_at + make_interval(mins => (60 * c.water_hours_left)::int) as dry_at,
                          c.people_dry, c.stock_dry, c.promised_by, v.planned_on as visit_on
                        from calls c left join sites s on s.id = c.site_id left join visits v on v.id = c.visit_id and v.state = 'PLANNED'
                        where c.closed_at is null
                        order by (v.planned_on is not null), c.received_at + make_interval(mins => (60 * coalesce(c.water_hours_left,
                          case when c.people_dry or c.stock_dry then 0 else 72 end))::int), c.id limit 20""").query(OpenCall.class).list();
    }

    List<NotBack> notBack() {
        return NotBackQuery.all(jdbc, clock);
    }

    /** What nobody has planned for the week first, then what is due longest: the order of the columns that the page shows. */
    List<MustGo> mustGo(int limit) {
        return jdbc.sql("""
                        with pressing as (
                          select t.id, t.install_id, t.task_kind_id, t.due_on, t.last_done_on, t.counting_from, t.window_until
                          from service_tasks t
                          where t.ended_on is null and t.done_by = 'US' and t.due_on <= :sunday and t.window_until <= :sunday
                            and (t.asleep_since is null or t.wakes_on <= :today) and t.waiting in ('OURS', 'PARTS')
                          order by t.due_on, t.id limit :most)
                        select m.* from (select i.site_id, s.name as site, s.locality, d.name as depot,
                          string_agg(distinct k.name, ', ') as tasks, count(*)::int as count, min(t.due_on) as due_on,
                          (array_agg(coalesce(t.last_done_on, t.counting_from) order by t.due_on))[1] as from,
                          (select min(v.planned_on) from visits v where v.site_id = i.site_id and v.state = 'PLANNED' and v.planned_on >= :today) as planned_on,
                          count(*) over () as sites
                        from pressing t join installs i on i.id = t.install_id join sites s on s.id = i.site_id
                          join task_kinds k on k.id = t.task_kind_id left join depots d on d.id = s.depot_id
                        group by i.site_id, s.name, s.locality, d.name) m
                        order by coalesce(m.planned_on <= :sunday, false), m.due_on, m.site_id limit :limit""")
                .param("today", today())
                .param("sunday", sunday())
                .param("most", Slice.CAP)
                .param("limit", limit)
                .query(MustGo.class)
                .list();
    }

    List<Promise> promises() {
        return jdbc.sql("""
                        select f.site_id, s.name as site, f.text, f.due_on from open_follow_ups f join sites s on s.id = f.site_id
                        where f.due_on <= :sunday order by f.due_on, f.id limit 15""").param("sunday", sunday()).query(Promise.class).list();
    }

    List<DayLoad> week() {
        return jdbc.sql("""
                        select p.name as person, v.planned_on as day, count(*)::int as visits, sum(v.minutes)::int as minutes
                        from visits v join visit_people vp on vp.visit_id = v.id join people p on p.id = vp.person_id
                        where v.state = 'PLANNED' and v.planned_on between :today and :sunday
                        group by p.id, p.name, v.planned_on order by p.name, v.planned_on""")
                .param("today", today())
                .param("sunday", sunday())
                .query(DayLoad.class)
                .list();
    }

    long toSettle() {
        return jdbc.sql("select count(*) from to_settle where settled_at is null")
                .query(Long.class)
                .single();
    }

    /** Consents to see to within 30 days, and those that are past it. */
    long consentsDue() {
        return jdbc.sql("select count(*) from consents where due_on <= :until or expires_on <= :until")
                .param("until", today().plusDays(30))
                .query(Long.class)
                .single();
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }

    private LocalDate sunday() {
        return today().with(TemporalAdjusters.nextOrSame(DayOfWeek.SUNDAY));
    }
}
