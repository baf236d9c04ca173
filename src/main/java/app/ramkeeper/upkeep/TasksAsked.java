package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.upkeep.rules.DoneBy;
import app.ramkeeper.upkeep.rules.Waiting;
import app.ramkeeper.visits.AskedTask;
import app.ramkeeper.visits.AskedTasks;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Answers the plan and the visit form, which lie below and only know the question. */
@Service
@Transactional(readOnly = true)
class TasksAsked implements AskedTasks {

    private final DueTaskQuery query;
    private final MessageSource words;
    private final Say say;

    TasksAsked(DueTaskQuery query, MessageSource words, Say say) {
        this.query = query;
        this.words = words;
        this.say = say;
    }

    @Override
    public List<AskedTask> byId(Collection<UUID> tasks) {
        return query.byId(tasks).stream().map(this::asked).toList();
    }

    @Override
    public List<AskedTask> openAt(SiteId site, LocalDate on) {
        return query.ofSite(site.value()).stream()
                .filter(task -> isOpen(task, on))
                .map(this::asked)
                .toList();
    }

    private static boolean isOpen(DueTask task, LocalDate on) {
        LocalDate from = task.windowFrom();
        return task.doneBy() == DoneBy.US && from != null && !from.isAfter(on) && !sleeps(task, on);
    }

    private static boolean sleeps(DueTask task, LocalDate on) {
        LocalDate since = task.asleepSince();
        LocalDate wakes = task.wakesOn();
        return since != null && !since.isAfter(on) && (wakes == null || wakes.isAfter(on));
    }

    private AskedTask asked(DueTask task) {
        String state = words.getMessage(
                "upkeep.state." + task.state(), null, task.state().name(), Locale.UK);
        return new AskedTask(
                task.id(),
                new SiteId(task.siteId()),
                new InstallId(task.installId()),
                task.installName(),
                task.pumpId() == null ? null : new PumpId(task.pumpId()),
                task.pumpName(),
                new TaskKindId(task.kindId()),
                task.kindName(),
                task.minutes(),
                task.dueOn(),
                (task.dueOn() == null ? state : state + ", " + say.due(task.dueOn())) + waiting(task));
    }

    /** Why it was not done so far, so that whoever plans or drives knows; empty if it is only our own delay. */
    private String waiting(DueTask task) {
        if (task.waiting() == Waiting.OURS) {
            return "";
        }
        String whose = words.getMessage("waiting." + task.waiting(), null, Locale.UK);
        return "; " + (task.waitingNote() == null ? whose : whose + ": " + task.waitingNote());
    }
}
