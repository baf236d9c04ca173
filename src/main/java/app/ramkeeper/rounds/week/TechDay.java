package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A technician's day to be filled; times are minutes of the day.
 *
 * @param away why there is no such day, as "is on leave"; null on a working day
 * @param skills of the technician and who rides along
 * @param locked the optimiser leaves it alone
 * @param lateAt the time of day to which the office has put the round's progress
 */
public record TechDay(
        UUID personId,
        String name,
        LocalDate day,
        @Nullable String away,
        int from,
        int until,
        int longest,
        int breakMinutes,
        @Nullable Position start,
        @Nullable Position end,
        Set<String> skills,
        @Nullable UUID depotId,
        @Nullable UUID mateId,
        @Nullable String mate,
        boolean locked,
        @Nullable Integer lateAt) {

    /** No visit starts after this time of day before the break was taken. */
    public static final int NOON = 12 * 60;

    /** The break begins no earlier. */
    public static final int BREAK_FROM = 11 * 60;

    public int crew() {
        return mateId == null ? 1 : 2;
    }

    /** The break counts only for who works before and after noon. */
    public int breakDue() {
        return from < NOON && until > NOON + breakMinutes ? breakMinutes : 0;
    }

    public boolean works() {
        return away == null && start != null && end != null;
    }

    public RoundKey key() {
        return new RoundKey(personId, day);
    }
}
