package app.ramkeeper.rounds.week;

import app.ramkeeper.visits.Answer;
import app.ramkeeper.visits.VisitAnswered;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What a customer says changes the plan of the week at once: told or agreed holds the day, agreed holds technician and time too,
 * asked to move takes the visit out of its round and bars that day, and the third try in a row that reaches nobody takes
 * it out for the office to decide. One failed try changes nothing.
 */
@Component
class AnswersInPlan {

    private static final int TRIES = 3;
    private static final String OUT = "person_id = null, day = null, position = null, locked = false, excuse = null,"
            + " fixed_on = null, fixed_from = null, ";
    private static final String VISIT = " from visits v where v.id = w.visit_id and w.id = ?";

    private final JdbcClient jdbc;
    private final WeekStore weeks;
    private final Versions versions;
    private final Clock clock;

    AnswersInPlan(JdbcClient jdbc, WeekStore weeks, Versions versions, Clock clock) {
        this.jdbc = jdbc;
        this.weeks = weeks;
        this.versions = versions;
        this.clock = clock;
    }

    private record Standing(UUID id, UUID planId, String site) {}

    @EventListener
    void on(VisitAnswered said) {
        boolean gaveUp = said.answer() == Answer.NO_ANSWER && said.failed() % TRIES == 0;
        if (said.answer() == Answer.NO_ANSWER && !gaveUp) {
            return;
        }
        List<Standing> standing = jdbc.sql("""
                        select w.id, w.plan_id, s.name as site from week_stops w join week_plans p on p.id = w.plan_id join sites s on s.id = w.site_id
                        where w.visit_id = :visit and p.monday > :today::date - 7""")
                .param("visit", said.visit().value())
                .param("today", LocalDate.now(clock))
                .query(Standing.class)
                .list();
        for (Standing stop : standing) {
            WeekPlan plan = weeks.plan(stop.planId()).orElseThrow();
            versions.hold(plan, plan.version());
            jdbc.sql("update week_stops w set " + change(said.answer()) + VISIT)
                    .param(stop.id())
                    .update();
            Placement.renumber(jdbc, stop.planId());
            versions.next(plan, said.by().value(), stop.site() + ": " + words(said.answer()), null);
        }
    }

    private static String change(Answer answer) {
        return switch (answer) {
            case TOLD -> "fixed_on = v.planned_on";
            case CONFIRMED ->
                "fixed_on = v.planned_on, fixed_from = v.planned_from, not_on = null, set_aside = null,"
                        + " locked = w.day is not null and w.day = v.planned_on";
            case ASKED_TO_MOVE -> OUT + "not_on = v.planned_on, left_out = 'the customer asked for another day'";
            case NONE, NO_ANSWER ->
                OUT + "set_aside = 'nobody answered in three tries: write to them, or offer it again'";
        };
    }

    private static String words(Answer answer) {
        return switch (answer) {
            case TOLD -> "the customer was told";
            case CONFIRMED -> "the customer agreed; held to its technician, day and time";
            case ASKED_TO_MOVE -> "the customer asked for another day; taken out of its round";
            case NONE, NO_ANSWER -> "nobody answered in three tries; taken out of its round";
        };
    }
}
