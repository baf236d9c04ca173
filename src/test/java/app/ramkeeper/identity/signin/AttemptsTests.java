package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.signin.Attempts.Limit;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

@SpringBootTest
@Import(TestDatabase.class)
class AttemptsTests {

    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final Limit LIMIT = new Limit(5, Duration.ofSeconds(20));

    @Autowired
    JdbcClient jdbc;

    private final String key = "test|" + UUID.randomUUID();

    @Test
    @DisplayName("SEC-49 thirty tries let five through, say how long to wait, and the next is heard after that")
    void sec49LetsFewThroughAndLeaks() {
        long heard = IntStream.range(0, 30)
                .filter(i -> at(0).take(key, LIMIT).isEmpty())
                .count();
        Duration pause = at(0).take(key, LIMIT).orElseThrow();

        assertThat(heard).isEqualTo(5);
        assertThat(pause).isEqualTo(Duration.ofSeconds(20));
        assertThat(at(19).take(key, LIMIT)).isPresent();
        assertThat(at(20).take(key, LIMIT)).isEmpty();
        assertThat(at(20).take(key, LIMIT)).isPresent();
    }

    @Test
    @DisplayName("SEC-49 knocking on a closed door does not keep it closed")
    void sec49RefusedTriesDoNotCount() {
        IntStream.range(0, 500).forEach(i -> at(0).take(key, LIMIT));

        assertThat(at(20).take(key, LIMIT)).isEmpty();
    }

    @Test
    @DisplayName("SEC-49 parallel tries of several nodes cannot slip past")
    void sec49CountsInParallel() throws Exception {
        var pool = Executors.newFixedThreadPool(8);
        try {
            Callable<Boolean> attempt = () -> at(0).take(key, LIMIT).isEmpty();
            long heard = 0;
            for (var result : pool.invokeAll(java.util.Collections.nCopies(60, attempt))) {
                heard += result.get() ? 1 : 0;
            }
            assertThat(heard).isEqualTo(5);
        } finally {
            pool.shutdown();
        }
    }

    private Attempts at(int second) {
        return new Attempts(jdbc, Clock.fixed(START.plusSeconds(second), ZoneOffset.UTC));
    }
}
