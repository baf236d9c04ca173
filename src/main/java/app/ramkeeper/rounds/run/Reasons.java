package app.ramkeeper.rounds.run;

import app.ramkeeper.rounds.week.Openings;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits.LeftOut;
import java.util.ArrayList;
import java.util.List;

/** Says of each visit that is in no round why. */
final class Reasons {

    /** For so many of the dearest the best place is looked for; the rest would take long and matter least. */
    private static final int LOOKED_INTO = 250;

    private Reasons() {}

    static List<LeftOut> of(Week week, Openings openings) {
        List<LeftOut> reasons = new ArrayList<>();
        for (Stop stop : week.leftOut()) {
            reasons.add(new LeftOut(
                    stop.id(),
                    reasons.size() < LOOKED_INTO || stop.where() == null
                            ? openings.whyLeftOut(stop)
                            : "others that matter more fill the week"));
        }
        return reasons;
    }
}
