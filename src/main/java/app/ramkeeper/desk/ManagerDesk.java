package app.ramkeeper.desk;

import app.ramkeeper.identity.ForManager;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the manager must know first: what is overdue, whose it is, how bad; whether we keep up. */
@Service
@ForManager
@Transactional(readOnly = true)
class ManagerDesk {

    private final JdbcClient jdbc;
    private final Clock clock;

    ManagerDesk(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A watched task that is long overdue. */
    public record Worst(
            UUID installId,
            UUID siteId,
            String install,
            String site,
            String kind,
            LocalDate dueOn,
            @Nullable LocalDate from,
            String waiting,
            @Nullable String waitingNote,
            @Nullable LocalDate lastVisit,
            @Nullable String lastWho) {}

    /** Visits that had to be repeated at the same install within a month. */
    public record ReturnVisit(
            UUID installId,
            String install,
            String site,
            LocalDate first,
            LocalDate again,
            @Nullable String who) {}

    /** Are we keeping up: what fell due in a month and what was done in it. */
    public record Month(LocalDate month, long visits, long couldNot, long calls) {}

    /** How fast calls of the last ninety days were answered, in hours. */
    public record Response(
            long calls,
            @Nullable Double medianHours,
            @Nullable Double slowTenthHours) {}

    /** The watched tasks (valve rubbers) that are longest overdue, with the reason and the last who was there. */
    List<Worst> worst() {
        return jdbc.sql("""
                        select i.id as install_id, i.site_id, i.name as install, s.name as site, k.name as kind, t.due_on,
                          coalesce(t.last_done_on, t.counting_from) as from, t.waiting, t.waiting_note,
                          l.attended_on as last_visit, l.who as last_who
                        from service_tasks t join task_kinds k on k.id = t.task_kind_id and k.watched
                          join installs i on i.id = t.install_id join sites s on s.id = i.site_id
                          left join lateral (select r.attended_on, (select string_agg(p.name, ', ' order by rp.lead desc, p.name)
                              from report_people rp join people p on p.id = rp.person_id where rp.report_id = r.id) as who
                            from current_reports r where r.site_id = i.site_id order by r.attended_on desc, r.id limit 1) l on true
                        where t.ended_on is null and t.done_by = 'US' and t.due_on < :today and t.window_until < :today
                          and (t.asleep_since is null or t.wakes_on <= :today)
                        order by t.due_on, t.id limit 12""").param("today", today()).query(Worst.class).list();
    }

    List<NotBack> notBack() {
        return NotBackQuery.all(jdbc, clock);
    }

    List<ReturnVisit> returnVisits() {
        return jdbc.sql("""
                        with done as (
                          select r.id, w.install_id, r.attended_on, r.kind,
                            lag(r.attended_on) over (partition by w.install_id order by r.attended_on, r.id) as before
                          from current_reports r join (select distinct report_id, install_id from report_works) w on w.report_id = r.id
                          where r.attended_on >= :since and r.outcome <> 'COULD_NOT' and r.kind in ('SERVICE', 'CALL_OUT'))
                        select d.install_id, i.name as install, s.name as site, d.before as first, d.attended_on as again,
                          (select string_agg(p.name, ', ' order by p.name) from report_people rp join people p on p.id = rp.person_id where rp.report_id = d.id) as who
                        from done d join installs i on i.id = d.install_id join sites s on s.id = i.site_id
                        where d.before > d.attended_on - 30 and d.before < d.attended_on and d.attended_on >= :shown
                        order by d.attended_on desc limit 12""")
                .param("since", today().minusDays(120))
                .param("shown", today().minusDays(60))
                .query(ReturnVisit.class)
                .list();
    }

    List<Month> months() {
        return jdbc.sql("""
                        select m.month::date, count(r.id) filter (where r.outcome <> 'COULD_NOT') as visits,
                          count(r.id) filter (where r.outcome = 'COULD_NOT') as could_not,
                          (select count(*) from calls c where (c.received_at at time zone :zone)::date >= m.month
                             and (c.received_at at time zone :zone)::date < m.month + interval '1 month') as calls
                        from generate_series(date_trunc('month', :today::date) - interval '11 months', date_trunc('month', :today::date), interval '1 month') as m(month)
                          left join current_reports r on r.attended_on >= m.month and r.attended_on < m.month + interval '1 month'
                        group by m.month order by m.month""")
                .param("today", today())
                .param("zone", clock.getZone().getId())
                .query(Month.class)
                .list();
    }

    Response response() {
        return jdbc.sql("""
                        with answered as (
                          select extract(epoch from (coalesce(min(r.arrived_at), min(r.attended_on)::timestamp at time zone :zone + interval '12 hours') - c.received_at)) / 3600 as hours
                          from calls c join visits v on v.id = c.visit_id join current_reports r on r.visit_id = v.id
                          where c.received_at >= :since::date group by c.id, c.received_at)
                        select count(*) as calls, percentile_cont(0.5) within group (order by greatest(hours, 0)) as median_hours,
                          percentile_cont(0.9) within group (order by greatest(hours, 0)) as slow_tenth_hours from answered""")
                .param("since", today().minusDays(90))
                .param("zone", clock.getZone().getId())
                .query(Response.class)
                .single();
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }
}
