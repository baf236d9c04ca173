package app.ramkeeper.exchange;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/**
 * Lets one job at a time work on an import, and one import at a time write, so that two do not both make the same new
 * customer. Both locks end with the transaction and stand in no row, so that nobody who presses Stop has to wait for them.
 */
@Repository
class Gate {

    private static final long WRITING = 0x72616D696D706F72L;

    private final JdbcClient jdbc;

    Gate(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Takes an import for this transaction; false if another job has it. */
    boolean take(ImportId id) {
        return lock(id.value().getLeastSignificantBits() ^ WRITING);
    }

    /** Takes the right to write for this transaction; false if another import has it. */
    boolean takeWriting() {
        return lock(WRITING);
    }

    private boolean lock(long key) {
        return jdbc.sql("select pg_try_advisory_xact_lock(:key)")
                .param("key", key)
                .query(Boolean.class)
                .single();
    }
}
