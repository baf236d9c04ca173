package app.ramkeeper.rounds.week;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A reason covers a broken rule as it stood when it was given, not what a later change makes of it. */
final class Excuses {

    private Excuses() {}

    /**
     * Gives visits at which a change broke more than before the reason for the change: without one, what was allowed before does
     * not cover it.
     *
     * @param moved the visit that the change was about; its reason was just given
     */
    static void renew(JdbcClient jdbc, Week before, Week after, @Nullable UUID moved, @Nullable String reason) {
        for (Stop stop : after.stops()) {
            if (stop.placed() && !stop.over() && !stop.id().equals(moved) && brokenMore(before, after, stop)) {
                jdbc.sql("update week_stops set excuse = ? where id = ?")
                        .param(reason)
                        .param(stop.id())
                        .update();
            }
        }
    }

    private static boolean brokenMore(Week before, Week after, Stop stop) {
        DayTimes now = after.times(key(stop));
        List<DayTimes.Breach> broken = now.at(stop);
        Stop old = before.stop(stop.id()).orElse(null);
        if (broken.isEmpty() || old == null || !old.placed()) {
            return !broken.isEmpty();
        }
        DayTimes then = before.times(key(old));
        return broken.size() > then.at(old).size()
                || starts(now, stop) > starts(then, old) + Drive.PUNCTUAL
                || isLast(now, stop) && now.back() > then.back() + Drive.PUNCTUAL;
    }

    /** Where what is wrong with the whole day stands. */
    private static boolean isLast(DayTimes times, Stop stop) {
        return times.lines().get(times.lines().size() - 1).stop().id().equals(stop.id());
    }

    private static double starts(DayTimes times, Stop stop) {
        return Objects.requireNonNull(times.lineOf(stop.id())).starts();
    }

    private static RoundKey key(Stop stop) {
        return new RoundKey(Objects.requireNonNull(stop.personId()), Objects.requireNonNull(stop.day()));
    }
}
