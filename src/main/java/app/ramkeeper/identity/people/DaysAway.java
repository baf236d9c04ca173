package app.ramkeeper.identity.people;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** On which days people are away; the office plans around them, so it keeps them too. */
@Service
@Transactional
@ForRegister
class DaysAway {

    /** Some days away, as pages list them. */
    record Row(
            UUID id,
            UUID personId,
            String name,
            LocalDate fromDate,
            LocalDate untilDate,
            @Nullable String note) {}

    private static final String ROWS =
            "select l.id, l.person_id, p.name, l.from_date, l.until_date, l.note from person_leave l join people p on p.id = l.person_id ";

    private final JdbcClient jdbc;
    private final Clock clock;

    DaysAway(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    List<Row> of(UUID person) {
        return jdbc.sql(ROWS + "where l.person_id = ? order by l.from_date desc limit 200")
                .param(person)
                .query(Row.class)
                .list();
    }

    /** Of everybody, from today on. */
    @Transactional(readOnly = true)
    List<Row> coming() {
        return jdbc.sql(ROWS + "where l.until_date >= ? order by l.from_date, p.name, l.id limit 500")
                .param(LocalDate.now(clock))
                .query(Row.class)
                .list();
    }

    void add(UUID person, LeaveForm form) {
        int added = jdbc.sql("""
                        insert into person_leave (id, person_id, from_date, until_date, note)
                        select :id, id, :from, :until, :note from people where id = :person""")
                .param("id", PersonId.next().value())
                .param("person", person)
                .param("from", form.fromDate())
                .param("until", form.untilDate())
                .param("note", form.note())
                .update();
        if (added == 0) {
            throw new Missing("person", person);
        }
    }

    void remove(UUID person, UUID leave) {
        int removed = jdbc.sql("delete from person_leave where id = ? and person_id = ?")
                .params(leave, person)
                .update();
        if (removed == 0) {
            throw new Missing("leave", leave);
        }
    }
}
