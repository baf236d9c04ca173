package app.ramkeeper.desk;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A technician who should be back and has not said so: where they were last, what they drive, whom to ring.
 *
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
        @Nullable String nextOfKinPhone) {}
