package app.ramkeeper.desk;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A technician who should be back and has not said so: where they were last, what they drive, whom to ring. */
public record NotBack(
        String name,
        @Nullable String phone,
        Instant dueBackAt,
        @Nullable String lastSite,
        @Nullable String vehicle,
        @Nullable String nextOfKin,
        @Nullable String nextOfKinPhone) {}
