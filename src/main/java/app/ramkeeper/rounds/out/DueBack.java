package app.ramkeeper.rounds.out;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.week.DayTimes;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.visits.FieldDays;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** By when each published round should be back: whoever does not say so by then is looked for, whether their phone talks or not. */
@Service
@ForOffice
@Transactional
public class DueBack {

    private final JdbcClient jdbc;
    private final FieldDays fieldDays;
    private final Clock clock;

    DueBack(JdbcClient jdbc, FieldDays fieldDays, Clock clock) {
        this.jdbc = jdbc;
        this.fieldDays = fieldDays;
        this.clock = clock;
    }

    /** Puts down the due-back times of a week as it is published, from today on. */
    void publish(Week week) {
        LocalDate today = LocalDate.now(clock);
        jdbc.sql("delete from rounds_due_back where plan_id = ? and day >= ? and heard_at is null")
                .params(week.plan().id(), today)
                .update();
        for (TechDay round : week.rounds()) {
            DayTimes times = week.times(round.key());
            if (!round.day().isBefore(today) && !times.lines().isEmpty()) {
                put(week, round, times.back());
            }
        }
    }

    private void put(Week week, TechDay round, double minutes) {
        Instant back = round.day()
                .atStartOfDay()
                .plusMinutes(Math.round(minutes))
                .atZone(clock.getZone())
                .toInstant();
        jdbc.sql("""
                        insert into rounds_due_back (person_id, day, plan_id, due_back_at) values (?, ?, ?, ?)
                        on conflict (person_id, day) do update set plan_id = excluded.plan_id, due_back_at = excluded.due_back_at""")
                .params(round.personId(), round.day(), week.plan().id(), Timestamp.from(back))
                .update();
    }

    /** The office has heard that somebody is back: ends the alarm, and the outing they checked out for. */
    public void heardFrom(PersonId person) {
        fieldDays.back(person);
        jdbc.sql(
                        "update rounds_due_back set heard_at = :now where person_id = :person and heard_at is null and due_back_at < :now")
                .param("now", Timestamp.from(clock.instant()))
                .param("person", person.value())
                .update();
    }
}
