package app.ramkeeper.rounds.week;

import app.ramkeeper.visits.calls.DraftedVisits;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Answers a call's page, which lies below and only knows the question. */
@Repository
class DraftOfCall implements DraftedVisits {

    private final JdbcClient jdbc;
    private final Clock clock;

    DraftOfCall(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public Optional<Drafted> of(UUID visit) {
        LocalDate monday = LocalDate.now(clock).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        return jdbc.sql("""
                        select p.monday, w.id as stop, w.day as "on", who.name as who
                        from week_stops w join week_plans p on p.id = w.plan_id left join people who on who.id = w.person_id
                        where w.visit_id = ? and p.monday >= ? order by w.day is null, p.monday limit 1""").params(visit, monday).query(Drafted.class).optional();
    }
}
