package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Copies of stops. */
public final class Stops {

    private Stops() {}

    /** The stop at another place in the week, or in no round. */
    public static Stop placed(Stop s, @Nullable UUID person, @Nullable LocalDate day, @Nullable Integer position) {
        return copy(s, s.minutes(), person, day, position);
    }

    /** The stop with another time at the site. */
    static Stop lasting(Stop s, int minutes) {
        return copy(s, minutes, s.personId(), s.day(), s.position());
    }

    private static Stop copy(
            Stop s, int minutes, @Nullable UUID person, @Nullable LocalDate day, @Nullable Integer position) {
        return new Stop(
                s.id(),
                s.siteId(),
                s.site(),
                s.locality(),
                s.latitude(),
                s.longitude(),
                s.biosecurity(),
                s.catchmentId(),
                s.visitId(),
                s.kind(),
                minutes,
                s.crew(),
                s.skills(),
                s.must(),
                s.fixedOn(),
                s.fixedFrom(),
                s.notOn(),
                s.worth(),
                s.worthADay(),
                s.why(),
                s.dueOn(),
                s.lateFrom(),
                s.addedByHand(),
                person,
                day,
                position,
                s.locked(),
                s.setAside(),
                s.excuse(),
                s.leftOut(),
                s.publishedOn(),
                s.publishedFrom(),
                s.publishedTo(),
                s.changedAt(),
                s.visitState(),
                s.answer(),
                s.hadAgreedOn(),
                s.hadAgreedFrom(),
                s.officeMustRing(),
                s.tasks(),
                s.lastTechnician(),
                s.minutesAsked(),
                s.minutesTold(),
                s.tasksUntold(),
                s.promised(),
                s.promisedOn());
    }
}
