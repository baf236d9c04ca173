package app.ramkeeper.desk;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A technician who should be back and has not said so: where they were last, what they drive, whom to ring.
 *
 * @param lastSite where they said they were, else where they last reported from, else where the plan has them by now
 * @param stillPlanned sites of that day that nothing was reported from, with their times
 * @param checkedOut whether they gave the time themselves; else it is that of their published round
 */
public record NotBack(
        UUID personId,
        String name,
        @Nullable String phone,
        Instant dueBackAt,
        boolean checkedOut,
        @Nullable String lastSite,
        @Nullable String vehicle,
        @Nullable String nextOfKin,
        @Nullable String nextOfKinPhone,
        @Nullable String stillPlanned) {}
