package app.ramkeeper.desk;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Finds who is past the time they said they would be back; office and manager both see it first. */
final class NotBackQuery {

    private NotBackQuery() {}

    static List<NotBack> all(JdbcClient jdbc, Clock clock) {
        return jdbc.sql("""
                        select p.name, p.phone, d.due_back_at, s.name as last_site, p.vehicle, p.next_of_kin, p.next_of_kin_phone
                        from field_days d join people p on p.id = d.person_id left join sites s on s.id = d.last_site_id
                        where d.back_at is null and d.due_back_at < :now and d.day >= :since order by d.due_back_at""")
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("since", LocalDate.now(clock).minusDays(3))
                .query(NotBack.class)
                .list();
    }
}
