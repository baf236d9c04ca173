package app.ramkeeper.field;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Phones with their keys: each phone has one for each person who signs in on it, and its private half never leaves it. */
@Service
@ForField
@Transactional
class Devices {

    private final JdbcClient jdbc;
    private final Clock clock;

    Devices(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * Keeps a phone's public key for the person who is signed in on it.
     *
     * @param spki the key as browsers export it, on the curve P-256
     * @throws IllegalArgumentException if it is no such key
     */
    UUID register(PersonId person, byte[] spki) {
        key(spki);
        UUID id = Uuids.next();
        jdbc.sql(
                        "insert into field_devices (id, person_id, public_key, registered_at) values (:id, :person, :key, :now)")
                .param("id", id)
                .param("person", person.value())
                .param("key", spki)
                .param("now", Timestamp.from(clock.instant()))
                .update();
        return id;
    }

    /** Whether this person's phone signed that text of that entry. */
    boolean signed(UUID device, UUID person, String signedText, byte[] signature) {
        return jdbc.sql("select public_key from field_devices where id = :id and person_id = :person")
                .param("id", device)
                .param("person", person)
                .query(byte[].class)
                .optional()
                .filter(spki -> verifies(key(spki), signedText, signature))
                .isPresent();
    }

    private static boolean verifies(PublicKey key, String signedText, byte[] signature) {
        try {
            Signature check = Signature.getInstance("SHA256withECDSAinP1363Format");
            check.initVerify(key);
            check.update(signedText.getBytes(StandardCharsets.UTF_8));
            return check.verify(signature);
        } catch (GeneralSecurityException malformed) {
            return false;
        }
    }

    private static PublicKey key(byte[] spki) {
        try {
            return KeyFactory.getInstance("EC").generatePublic(new X509EncodedKeySpec(spki));
        } catch (GeneralSecurityException noKey) {
            throw new IllegalArgumentException("This is no public key of the kind phones make here.", noKey);
        }
    }
}
