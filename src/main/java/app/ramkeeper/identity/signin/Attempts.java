package app.ramkeeper.identity.signin;

import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Counts tries of what can be guessed, in Postgres, so that all nodes share the count.
 *
 * <p>Each key is a leaky bucket: a try adds one, time takes away, and a full bucket refuses without adding, so that
 * knocking on a closed door never keeps it closed. One statement, so parallel tries cannot slip past.
 */
@Component
public class Attempts {

    /** How much a bucket holds, and how long one unit takes to leak away. */
    public record Limit(double capacity, Duration leak) {}

    private record Level(double level, boolean refused) {}

    private static final String TAKE = """
            insert into attempts as a (key, level, refused, updated_at) values (:key, 1, false, :now)
            on conflict (key) do update set
              level = greatest(0, a.level - greatest(0, extract(epoch from :now - a.updated_at)) / :leak)
                + case when greatest(0, a.level - greatest(0, extract(epoch from :now - a.updated_at)) / :leak) + 1 > :capacity then 0 else 1 end,
              refused = greatest(0, a.level - greatest(0, extract(epoch from :now - a.updated_at)) / :leak) + 1 > :capacity,
              updated_at = :now
            returning level, refused""";

    private final JdbcClient jdbc;
    private final Clock clock;

    Attempts(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Takes one try; if there is none left, returns how long to wait for the next. */
    public Optional<Duration> take(String key, Limit limit) {
        double leakSeconds = limit.leak().toMillis() / 1000.0;
        Level now = jdbc.sql(TAKE)
                .param("key", key.length() <= 300 ? key : key.substring(0, 300))
                .param("now", OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC))
                .param("leak", leakSeconds)
                .param("capacity", limit.capacity())
                .query(Level.class)
                .single();
        if (!now.refused()) {
            return Optional.empty();
        }
        double wait = (now.level() + 1 - limit.capacity()) * leakSeconds;
        return Optional.of(Duration.ofSeconds((long) Math.ceil(Math.max(1, wait))));
    }

    /** Forgets the tries of a key, after the right password, and what is too old to count. */
    public void forget(String key) {
        jdbc.sql("delete from attempts where key = ? or updated_at < ?")
                .params(key, OffsetDateTime.ofInstant(clock.instant().minus(Duration.ofDays(2)), ZoneOffset.UTC))
                .update();
    }
}
