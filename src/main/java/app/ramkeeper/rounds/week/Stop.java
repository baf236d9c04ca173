package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A visit that could go into the week, with where it stands now.
 *
 * @param minutes time at the site with the walk in and out
 * @param skills codes of what is asked for, comma between
 * @param fixedOn the day that it is held to, as the customer agreed to it or was told
 * @param notOn the day they asked to move it from
 * @param worth what leaving it out costs, in minutes of driving
 * @param worthADay what each day of waiting within the week adds, from lateFrom on
 * @param lateFrom the end of the first window that ends before the week does; without one each day from Monday on counts
 * @param why in words, why it is a candidate
 * @param setAside the office's reason to leave it out
 * @param excuse the office's reason to break a rule
 * @param leftOut why the optimiser left it out
 * @param minutesAsked what the tasks of a planned visit need, if that is known
 * @param minutesTold what a published visit still lasts for the technician although it is planned otherwise by now
 * @param tasksUntold whether a published visit has come to have other tasks than the technician was told
 * @param hadAgreedOn the day that the customer had agreed to while the visit is planned otherwise and they have not been told
 * @param promised what was promised at the site and by when, in words
 * @param promisedOn the first day that something was promised by
 * @param lastTechnician who was at the site last
 */
public record Stop(
        UUID id,
        UUID siteId,
        String site,
        @Nullable String locality,
        @Nullable Double latitude,
        @Nullable Double longitude,
        String biosecurity,
        @Nullable UUID catchmentId,
        @Nullable UUID visitId,
        String kind,
        int minutes,
        int crew,
        @Nullable String skills,
        boolean must,
        @Nullable LocalDate fixedOn,
        @Nullable LocalTime fixedFrom,
        @Nullable LocalDate notOn,
        double worth,
        double worthADay,
        String why,
        @Nullable LocalDate dueOn,
        @Nullable LocalDate lateFrom,
        boolean addedByHand,
        @Nullable UUID personId,
        @Nullable LocalDate day,
        @Nullable Integer position,
        boolean locked,
        @Nullable String setAside,
        @Nullable String excuse,
        @Nullable String leftOut,
        @Nullable LocalDate publishedOn,
        @Nullable LocalTime publishedFrom,
        @Nullable UUID publishedTo,
        @Nullable Instant changedAt,
        @Nullable String visitState,
        @Nullable String answer,
        @Nullable LocalDate hadAgreedOn,
        @Nullable LocalTime hadAgreedFrom,
        boolean officeMustRing,
        @Nullable String tasks,
        @Nullable UUID lastTechnician,
        @Nullable Integer minutesAsked,
        @Nullable Integer minutesTold,
        boolean tasksUntold,
        @Nullable String promised,
        @Nullable LocalDate promisedOn) {

    /** What each day costs beyond the one that something was promised by: even on the last day better kept late than not at all. */
    private static final double PROMISE_A_DAY = 40;

    /** True if its tasks need longer than the minutes that somebody gave it. */
    public boolean tooShort() {
        return minutesAsked != null && minutesAsked > minutes;
    }

    /** True if it was published with other minutes or tasks than it is planned with now. */
    public boolean outgrown() {
        return minutesTold != null || tasksUntold;
    }

    /** Why it is held to its day: what the customer agreed to or was told, or works that take the day up. */
    public String held() {
        String day = Times.day(Objects.requireNonNull(fixedOn));
        return switch (answer == null ? "NONE" : answer) {
            case "CONFIRMED" -> "agreed with the customer for " + day;
            case "TOLD" -> "the customer was told " + day;
            default -> "held to " + day;
        };
    }

    /** What waiting within the week costs by then, for its tasks and for what was promised. */
    public double waiting(LocalDate monday, LocalDate on) {
        return worthADay * days(lateFrom, monday, on)
                + (promisedOn == null ? 0 : PROMISE_A_DAY * days(promisedOn, monday, on));
    }

    private static long days(@Nullable LocalDate end, LocalDate monday, LocalDate on) {
        return Math.max(0, ChronoUnit.DAYS.between(end == null || end.isBefore(monday) ? monday : end, on));
    }

    /** True if it stands later than was promised. */
    public boolean afterPromise() {
        return day != null && promisedOn != null && day.isAfter(promisedOn);
    }

    /** What the customer had agreed to, in words, while they have to be told anew; else null. */
    public @Nullable String hadAgreed() {
        return hadAgreedOn == null ? null : Times.dayAndTime(hadAgreedOn, hadAgreedFrom);
    }

    public boolean placed() {
        return day != null;
    }

    /** True once somebody has been there: nothing moves it any more. */
    public boolean over() {
        return visitState != null && !visitState.equals("PLANNED");
    }

    public boolean isMarked() {
        return !biosecurity.equals("CLEAN");
    }

    public List<String> skillList() {
        return skills == null || skills.isEmpty() ? List.of() : List.of(skills.split(","));
    }

    public @Nullable Position where() {
        return latitude == null || longitude == null ? null : new Position(latitude, longitude);
    }
}
