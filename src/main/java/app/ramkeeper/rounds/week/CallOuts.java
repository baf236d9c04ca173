package app.ramkeeper.rounds.week;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.visits.calls.CallView;
import app.ramkeeper.visits.calls.CallVisitForm;
import app.ramkeeper.visits.calls.Calls;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Brings the visit that answers a call into this week's published rounds, still without a place in one. */
@Service
@ForOffice
@Transactional
public class CallOuts {

    private static final int USUAL_MINUTES = 60;

    private final Calls calls;
    private final Preparation preparation;
    private final WeekStore weeks;
    private final JdbcClient jdbc;
    private final Clock clock;

    CallOuts(Calls calls, Preparation preparation, WeekStore weeks, JdbcClient jdbc, Clock clock) {
        this.calls = calls;
        this.preparation = preparation;
        this.weeks = weeks;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Where the visit's page in the week's plan is. */
    public record InWeek(LocalDate monday, UUID stop) {}

    /**
     * Puts the call's visit among what could go into this week; asking again finds the same one.
     *
     * @throws Conflict if the week is not published, or the call has no site or is closed
     */
    public InWeek bring(UUID call, UUID by) {
        CallView view = calls.view(call);
        LocalDate monday = LocalDate.now(clock).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        if (weeks.plan(monday).filter(p -> p.publishedAt() != null).isEmpty()) {
            throw new Conflict("This week's rounds are not published, so there is no round to put the call-out into."
                    + " Plan its visit by day and person on the call's page.");
        }
        UUID visit = view.line().visitId();
        if (visit == null || !"PLANNED".equals(view.visitState())) {
            visit = calls.plan(call, new CallVisitForm(null, null, USUAL_MINUTES, null, null))
                    .value();
        }
        UUID asked = visit;
        UUID stop = stop(monday, asked).orElseGet(() -> {
            preparation.prepare(monday, by);
            return stop(monday, asked)
                    .orElseThrow(
                            () -> new Conflict("The call's visit is planned for another week. Change its day first."));
        });
        return new InWeek(monday, stop);
    }

    private Optional<UUID> stop(LocalDate monday, UUID visit) {
        return jdbc.sql(
                        "select w.id from week_stops w join week_plans p on p.id = w.plan_id where p.monday = ? and w.visit_id = ?")
                .params(monday, visit)
                .query(UUID.class)
                .optional();
    }
}
