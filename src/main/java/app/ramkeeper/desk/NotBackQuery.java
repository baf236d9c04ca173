package app.ramkeeper.desk;

import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Finds who is past the time they said they would be back, and whose published round is over without any word from them;
 * office and manager both see it first.
 */
final class NotBackQuery {

    /** A round is reckoned, not promised: this long after it nobody is worried yet. */
    private static final int GRACE_MINUTES = 30;

    private NotBackQuery() {}

    static List<NotBack> all(JdbcClient jdbc, Clock clock) {
        return jdbc.sql("""
                        select p.id as person_id, p.name, p.phone, m.due_back_at, m.checked_out, p.vehicle, p.next_of_kin, p.next_of_kin_phone,
                          (select s.name from sites s where s.id = coalesce(m.last_site_id,
                            (select c.site_id from current_reports c join report_people rp on rp.report_id = c.id
                              where rp.person_id = p.id and c.attended_on = m.day order by c.recorded_at desc limit 1),
                            (select v.site_id from visits v join visit_people vp on vp.visit_id = v.id
                              where vp.person_id = p.id and v.planned_on = m.day and v.state <> 'CANCELLED'
                                and (m.day < :today or v.planned_from <= :time) order by v.planned_from desc nulls last, v.id limit 1))) as last_site,
                          (select string_agg(coalesce(to_char(v.planned_from, 'HH24:MI '), '') || s.name, ', ' order by v.planned_from nulls last, v.id)
                            from visits v join visit_people vp on vp.visit_id = v.id join sites s on s.id = v.site_id
                            where vp.person_id = p.id and v.planned_on = m.day and v.state = 'PLANNED') as still_planned
                        from (select d.person_id, d.day, d.due_back_at, true as checked_out, d.last_site_id from field_days d
                            where d.back_at is null and d.due_back_at < :now and d.day >= :since
                          union all
                          select r.person_id, r.day, r.due_back_at, false, null::uuid
                            from rounds_due_back r where r.heard_at is null and r.due_back_at + make_interval(mins => :grace) < :now and r.day >= :since
                              and not exists (select from field_days d where d.person_id = r.person_id and d.day = r.day)) m
                          join people p on p.id = m.person_id
                        order by m.due_back_at, p.id""")
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("today", LocalDate.now(clock))
                .param("time", LocalTime.now(clock))
                .param("grace", GRACE_MINUTES)
                .param("since", LocalDate.now(clock).minusDays(3))
                .query(NotBack.class)
                .list();
    }
}
