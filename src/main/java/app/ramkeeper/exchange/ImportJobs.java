package app.ramkeeper.exchange;

import app.ramkeeper.shared.Uuids;
import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.time.Instant;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.stereotype.Component;

/** Hands work on an import to whichever node is free. The job carries only the import's id; all else stands in its rows. */
@Component
class ImportJobs {

    private static final TaskDescriptor<Void> IMPORT = TaskDescriptor.of("import");

    private final ObjectProvider<Scheduler> scheduler;

    ImportJobs(ObjectProvider<Scheduler> scheduler) {
        this.scheduler = scheduler;
    }

    /** Asks for the import's next step, in the transaction that decided on it. */
    void schedule(ImportId id) {
        scheduler
                .getObject()
                .scheduleIfNotExists(IMPORT.instance(id + "/" + Uuids.next()).scheduledTo(Instant.now()));
    }

    /** How the audit trail names what an import does. */
    static String source(ImportId id) {
        return "import " + id;
    }

    @Configuration
    @EnableConfigurationProperties(ImportSettings.class)
    static class Task {

        @Bean
        OneTimeTask<Void> importTask(ImportRun run) {
            return Tasks.oneTime(IMPORT)
                    .execute((instance, context) -> run.run(new ImportId(
                            java.util.UUID.fromString(instance.getId().substring(0, 36)))));
        }
    }
}
