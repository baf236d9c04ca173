package app.ramkeeper.field;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A finished visit in its envelope, as the phone sends it.
 *
 * @param person who wrote it, whoever's session carries it
 * @param text the visit as JSON text; hash and signature are of this text, letter for letter
 * @param hash SHA-256 of the text in hexadecimal
 * @param signature of "id.hash" by the device's key, base64
 * @param sentAt by the phone's clock
 */
@JsonIgnoreProperties(ignoreUnknown = true)
record Entry(
        UUID id,
        UUID person,
        @Nullable UUID device,
        String text,
        String hash,
        @Nullable String signature,
        @Nullable Instant sentAt) {}
