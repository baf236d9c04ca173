package app.ramkeeper.visits;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Uuids;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Check-in: who goes out says by when they are back, and says so when they are. */
@Service
@Transactional
public class FieldDays {

    private final JdbcClient jdbc;
    private final Clock clock;

    FieldDays(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A person's day in the field; an outing that nobody ended stays until it is ended, for three days. */
    @ForField
    @Transactional(readOnly = true)
    public Optional<FieldDay> today(PersonId person) {
        return jdbc.sql("""
                        select left_at, due_back_at, back_at from field_days
                        where person_id = :person and (day = :today or (back_at is null and day between :since and :today))
                        order by (back_at is null) desc, day desc limit 1""")
                .param("person", person.value())
                .param("today", today())
                .param("since", today().minusDays(3))
                .query((row, n) -> fieldDay(row))
                .optional();
    }

    /**
     * Puts down that somebody leaves; who is out already gives another time.
     *
     * @throws Conflict if the time is past
     */
    @ForField
    public void leave(PersonId person, LocalTime dueBack) {
        Instant due = today().atTime(dueBack).atZone(clock.getZone()).toInstant();
        Instant now = clock.instant();
        if (!due.isAfter(now)) {
            throw new Conflict("That time is past. Give a later time of today.");
        }
        back(person, today().minusDays(3), today().minusDays(1));
        jdbc.sql("""
                        insert into field_days as d (id, person_id, day, left_at, due_back_at) values (:id, :person, :day, :now, :due)
                        on conflict (person_id, day) do update set due_back_at = excluded.due_back_at, back_at = null,
                          left_at = case when d.back_at is null then d.left_at else excluded.left_at end, version = d.version + 1""")
                .param("id", Uuids.next())
                .param("person", person.value())
                .param("day", today())
                .param("now", Timestamp.from(now))
                .param("due", Timestamp.from(due))
                .update();
    }

    /** Puts down that somebody is back; saying it twice changes nothing. */
    @ForField
    public void back(PersonId person) {
        back(person, today().minusDays(3), today());
    }

    private void back(PersonId person, LocalDate since, LocalDate until) {
        jdbc.sql("""
                        update field_days set back_at = greatest(:now, left_at), version = version + 1
                        where person_id = :person and back_at is null and day between :since and :until""")
                .param("now", Timestamp.from(clock.instant()))
                .param("person", person.value())
                .param("since", since)
                .param("until", until)
                .update();
    }

    /** Where somebody was last is where a search begins. */
    @EventListener
    void on(VisitReported reported) {
        jdbc.sql("""
                        update field_days set last_site_id = :site, version = version + 1
                        where day = :day and back_at is null and last_site_id is distinct from :site
                          and person_id in (select person_id from report_people where report_id = :report)""")
                .param("site", reported.site().value())
                .param("day", reported.attendedOn())
                .param("report", reported.report().value())
                .update();
    }

    private FieldDay fieldDay(ResultSet row) throws SQLException {
        Instant due = row.getTimestamp("due_back_at").toInstant();
        @Nullable Timestamp back = row.getTimestamp("back_at");
        return new FieldDay(
                row.getTimestamp("left_at").toInstant(),
                due,
                back == null ? null : back.toInstant(),
                back == null && due.isBefore(clock.instant()));
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }
}
