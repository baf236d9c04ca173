package app.ramkeeper.fleet;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A customer that was found, with the number of sites at which they play a part. */
public record CustomerMatch(
        UUID id,
        @Nullable String reference,
        String name,
        @Nullable String phone,
        @Nullable String email,
        long sites) {}
