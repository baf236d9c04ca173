package app.ramkeeper.upkeep.rules;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Where a task stands before its date is worked out.
 *
 * @param lastDoneOn the day it was last done
 * @param countingFrom where the first interval begins: commissioning, or the pump's fitting; null when not known
 * @param lookAgainOn what an inspection since then asked for
 * @param lookedOn the day of that inspection
 * @param forward a measured decline or an event since then
 */
public record Standing(
        @Nullable LocalDate lastDoneOn,
        @Nullable LocalDate countingFrom,
        @Nullable LocalDate lookAgainOn,
        @Nullable LocalDate lookedOn,
        @Nullable Forward forward) {

    public static Standing lastDone(LocalDate on) {
        return new Standing(on, null, null, null, null);
    }

    public static Standing countingFrom(LocalDate day) {
        return new Standing(null, day, null, null, null);
    }

    public static Standing unknown() {
        return new Standing(null, null, null, null, null);
    }

    public Standing inspected(LocalDate on, LocalDate lookAgain) {
        return new Standing(lastDoneOn, countingFrom, lookAgain, on, forward);
    }

    public Standing broughtForward(LocalDate since, LocalDate to) {
        return new Standing(lastDoneOn, countingFrom, lookAgainOn, lookedOn, new Forward(to, since));
    }

    /** Where the interval begins. */
    public @Nullable LocalDate base() {
        return lastDoneOn == null ? countingFrom : lastDoneOn;
    }

    /** The inspection's date, unless the task was done since. */
    @Nullable
    LocalDate openLook() {
        boolean open = lookedOn != null && (lastDoneOn == null || lookedOn.isAfter(lastDoneOn));
        return open ? lookAgainOn : null;
    }

    /** The date brought forward, unless the task was done or looked at since. */
    @Nullable
    LocalDate openForward() {
        if (forward == null || answers(lastDoneOn, forward.since()) || answers(lookedOn, forward.since())) {
            return null;
        }
        return forward.to();
    }

    private static boolean answers(@Nullable LocalDate day, LocalDate since) {
        return day != null && !day.isBefore(since);
    }

    /** A date brought forward: by when, and since when the reason stands. */
    public record Forward(LocalDate to, LocalDate since) {}
}
