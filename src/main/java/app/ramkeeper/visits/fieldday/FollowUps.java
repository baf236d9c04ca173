package app.ramkeeper.visits.fieldday;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Missing;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What visits left to do. */
@Service
@ForField
@Transactional
class FollowUps {

    private final JdbcClient jdbc;
    private final Clock clock;

    FollowUps(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * Marks it as done today; done twice keeps the first day.
     *
     * @return its site
     * @throws Missing if there is none
     */
    SiteId done(UUID id) {
        jdbc.sql("update follow_ups set done_on = :today, version = version + 1 where id = :id and done_on is null")
                .param("today", LocalDate.now(clock))
                .param("id", id)
                .update();
        return jdbc.sql("select site_id from follow_ups where id = :id")
                .param("id", id)
                .query(UUID.class)
                .optional()
                .map(SiteId::new)
                .orElseThrow(() -> new Missing("follow-up", id));
    }
}
