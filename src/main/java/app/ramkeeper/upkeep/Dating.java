package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.TaskTerms;
import app.ramkeeper.upkeep.TaskRow.Dates;
import app.ramkeeper.upkeep.rules.DueDate;
import app.ramkeeper.upkeep.rules.Idle;
import app.ramkeeper.upkeep.rules.LastDone;
import app.ramkeeper.upkeep.rules.Past;
import app.ramkeeper.upkeep.rules.Standing;
import app.ramkeeper.upkeep.rules.Terms;
import app.ramkeeper.upkeep.rules.Waiting;
import app.ramkeeper.upkeep.rules.Work;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Puts a stored task through the rules. */
final class Dating {

    private Dating() {}

    /** The task's dates from all that reports say of it. */
    static Dates fromHistory(TaskRow task, TaskTerms terms, List<Work> works, List<Idle> idles, LocalDate today) {
        LastDone none = task.countingFrom() == null && !task.planned() ? LastDone.UNKNOWN : LastDone.NEVER;
        return dates(task, Past.of(works, task.stated(), none), terms, idles, today);
    }

    /** The task's dates from what is stored of its history, under other terms or running states. */
    static Dates fromStored(TaskRow task, TaskTerms terms, List<Idle> idles, LocalDate today) {
        Dates now = task.dates();
        Standing standing = standing(task, now.lastDoneOn(), now.lookAgainOn(), now.lookedOn());
        return with(now, now, dueDate(task, terms, standing, idles), sleep(idles, today));
    }

    private static Dates dates(TaskRow task, Past past, TaskTerms terms, List<Idle> idles, LocalDate today) {
        Standing standing = standing(task, past.lastDoneOn(), past.lookAgainOn(), past.lookedOn());
        Dates history = history(task, past, standing);
        return with(task.dates(), history, dueDate(task, terms, standing, idles), sleep(idles, today));
    }

    private static DueDate dueDate(TaskRow task, TaskTerms terms, Standing standing, List<Idle> idles) {
        if (task.planned()) {
            return new DueDate(null, null, null);
        }
        return DueDate.of(Terms.of(terms, task.model(), task.waterClass(), task.agreed()), standing, idles);
    }

    private static Standing standing(
            TaskRow task, @Nullable LocalDate last, @Nullable LocalDate look, @Nullable LocalDate looked) {
        LocalDate to = task.dates().forwardTo();
        LocalDate since = task.dates().forwardSince();
        Standing.Forward forward = to == null || since == null ? null : new Standing.Forward(to, since);
        return new Standing(last, task.countingFrom(), look, looked, forward);
    }

    /** Whose it is: a failed attempt says so until the work is done; what the office said later holds. */
    private static Dates history(TaskRow task, Past past, Standing standing) {
        Dates now = task.dates();
        Work failed = past.hindrance();
        boolean officeSaid = now.waitingReport() == null
                && now.waitingSince() != null
                && (past.lastDoneOn() == null || now.waitingSince().isAfter(past.lastDoneOn()));
        boolean keep = officeSaid && (failed == null || !failed.on().isAfter(now.waitingSince()));
        Waiting whose = failed == null || failed.hindrance() == null ? Waiting.OURS : failed.hindrance();
        return new Dates(
                past.lastDoneOn(),
                past.lastDoneAs().name(),
                past.report(),
                past.lookAgainOn(),
                past.lookedOn(),
                now.forwardTo(),
                now.forwardSince(),
                now.forwardReason(),
                null,
                null,
                null,
                null,
                null,
                keep ? now.waiting() : whose,
                keep ? now.waitingSince() : failed == null ? null : failed.on(),
                keep ? now.waitingNote() : failed == null ? null : failed.note(),
                keep || failed == null ? null : failed.report());
    }

    private static @Nullable Idle sleep(List<Idle> idles, LocalDate today) {
        return idles.stream()
                .filter(idle ->
                        idle.asleep() && (idle.until() == null || idle.until().isAfter(today)))
                .min(java.util.Comparator.comparing(Idle::from))
                .orElse(null);
    }

    private static Dates with(Dates now, Dates history, DueDate due, @Nullable Idle sleep) {
        return new Dates(
                history.lastDoneOn(),
                history.lastDoneAs(),
                history.lastReport(),
                history.lookAgainOn(),
                history.lookedOn(),
                now.forwardTo(),
                now.forwardSince(),
                now.forwardReason(),
                due.on(),
                due.windowFrom(),
                due.windowUntil(),
                sleep == null ? null : sleep.from(),
                sleep == null ? null : sleep.until(),
                history.waiting(),
                history.waitingSince(),
                history.waitingNote(),
                history.waitingReport());
    }
}
