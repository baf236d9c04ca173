package app.ramkeeper.exchange;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Lets one import at a time write, so that two do not both make the same new customer. */
@Repository
class Gate {

    private static final long KEY = 0x72616D696D706F72L;

    private final JdbcClient jdbc;

    Gate(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Waits for other imports' transactions; opens again when this one ends. */
    void close() {
        jdbc.sql("select pg_advisory_xact_lock(:key)").param("key", KEY).query((row, n) -> "").single();
    }
}
