package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Tasks of one site that stand in the same week. Weeks are counted from the first one looked at. */
final class SiteGroup {

    final List<DueRow> tasks = new ArrayList<>();
    final DueRow first;

    /** Its week by due date; it may lie beyond those looked at, from where only what suits a nearer week better comes forward. */
    final int wish;

    /** The first and the last week that the windows allow. */
    int least;

    int most;

    int week;

    /** Another was moved to its week for its sake, or it to another's, so that it stays. */
    boolean anchored;

    /** Why it does not stand in the week of its wish. */
    String why = "";

    SiteGroup(DueRow task, int least, int most, int wish) {
        this.first = task;
        this.least = least;
        this.most = most;
        this.wish = wish;
        this.week = wish;
        tasks.add(task);
    }

    /** With the other's tasks too, in the weeks that suit both. */
    void take(SiteGroup other) {
        tasks.addAll(other.tasks);
        least = Math.min(week, Math.max(least, other.least));
        most = Math.max(week, Math.min(most, other.most));
    }

    double minutes() {
        return tasks.stream().mapToInt(DueRow::minutes).sum() + Horizon.DRIVE;
    }

    double weight() {
        return tasks.stream().mapToDouble(DueRow::weight).sum();
    }

    @Nullable
    Position where() {
        return first.latitude() == null || first.longitude() == null
                ? null
                : new Position(first.latitude(), first.longitude());
    }
}
