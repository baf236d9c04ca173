package app.ramkeeper.quotes.offer;

import app.ramkeeper.audit.Actor;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Lets quotes lapse whose time has run out. An answer checks the date itself; this writes it down, every hour. */
@Service
public class Lapsing {

    private record Due(UUID id, UUID quoteId, int revision) {}

    private final JdbcClient jdbc;
    private final QuoteStore store;
    private final Clock clock;

    Lapsing(JdbcClient jdbc, QuoteStore store, Clock clock) {
        this.jdbc = jdbc;
        this.store = store;
        this.clock = clock;
    }

    /** Marks what has lapsed by today. */
    @Transactional
    public int lapse() {
        var due = jdbc.sql("select id, quote_id, revision from quote_revisions where state = 'SENT' and valid_until < ?"
                        + " for update skip locked")
                .param(LocalDate.now(clock))
                .query(Due.class)
                .list();
        due.forEach(each -> {
            store.state(each.id(), QuoteState.LAPSED);
            store.step(new QuoteId(each.quoteId()), each.revision(), Step.Kind.LAPSED, "system", null);
        });
        return due.size();
    }

    @Configuration(proxyBeanMethods = false)
    static class Job {

        @Bean
        RecurringTask<Void> lapseQuotes(ObjectProvider<Lapsing> lapsing) {
            return Tasks.recurring("lapse-quotes", FixedDelay.of(Duration.ofHours(1)))
                    .execute((instance, context) -> Actor.as(
                            new Actor("system", "lapse-quotes"),
                            () -> lapsing.getObject().lapse()));
        }
    }
}
