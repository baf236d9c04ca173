package app.ramkeeper.shared;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.serializer.Serializer;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import java.time.Duration;
import java.util.List;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.datasource.TransactionAwareDataSourceProxy;

/**
 * Runs the jobs of all features: every bean that is a {@link Task}; a {@link RecurringTask} begins by itself. Whichever node is free takes one; a job whose node has
 * died is taken over after a minute. Asking for a job belongs to the transaction that asks.
 */
@Configuration(proxyBeanMethods = false)
class Jobs {

    @Bean(destroyMethod = "stop")
    Scheduler scheduler(DataSource dataSource, List<Task<?>> tasks, List<RecurringTask<?>> recurring) {
        return Scheduler.create(new TransactionAwareDataSourceProxy(dataSource), oncePerAsking(tasks))
                .startTasks(recurring)
                .threads(4)
                .pollingInterval(Duration.ofSeconds(1))
                .heartbeatInterval(Duration.ofSeconds(15))
                .missedHeartbeatsLimit(4)
                .shutdownMaxWait(Duration.ofSeconds(15))
                .serializer(new NoObjects())
                .build();
    }

    private static List<Task<?>> oncePerAsking(List<Task<?>> tasks) {
        return tasks.stream()
                .filter(task -> !(task instanceof RecurringTask<?>))
                .toList();
    }

    @Bean
    Start start(Scheduler scheduler) {
        return new Start(scheduler);
    }

    /** Jobs begin when the application is ready, after the migrations. */
    record Start(Scheduler scheduler) {
        @EventListener(ApplicationReadyEvent.class)
        void ready() {
            scheduler.start();
        }
    }

    /** A job carries its name only; what it works on stands in tables. So no object is ever read from bytes. */
    private static final class NoObjects implements Serializer {
        @Override
        public byte[] serialize(@Nullable Object data) {
            if (data != null) {
                throw new IllegalArgumentException("A job carries no objects");
            }
            return new byte[0];
        }

        @Override
        public <T> @Nullable T deserialize(Class<T> type, byte @Nullable [] bytes) {
            return null;
        }
    }
}
