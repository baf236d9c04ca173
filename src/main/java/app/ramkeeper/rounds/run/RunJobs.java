package app.ramkeeper.rounds.run;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.time.Instant;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.stereotype.Component;

/** Hands a run to whichever node is free; a node that dies leaves it to another. The job carries only the run's id. */
@Component
class RunJobs {

    private static final TaskDescriptor<Void> PLAN = TaskDescriptor.of("plan-week");

    private final ObjectProvider<Scheduler> scheduler;

    RunJobs(ObjectProvider<Scheduler> scheduler) {
        this.scheduler = scheduler;
    }

    /** Asks for the run, in the transaction that wrote it down. */
    void schedule(UUID run) {
        scheduler.getObject().scheduleIfNotExists(PLAN.instance(run.toString()).scheduledTo(Instant.now()));
    }

    @Configuration
    static class Task {

        @Bean
        OneTimeTask<Void> planWeekTask(SolveWeek solve) {
            return Tasks.oneTime(PLAN).execute((instance, context) -> solve.run(UUID.fromString(instance.getId())));
        }
    }
}
