package app.ramkeeper.visits;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Tells whether two reports with the same id say the same: SHA-256 over the command's JSON. */
@Component
class ContentHash {

    private final JsonMapper json;

    ContentHash(JsonMapper json) {
        this.json = json;
    }

    byte[] of(RecordVisit command) {
        return sha256(json.writeValueAsBytes(command));
    }

    static byte[] sha256(byte[] content) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(content);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}
