package app.ramkeeper.upkeep;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.upkeep.rules.DoneBy;
import app.ramkeeper.upkeep.rules.Waiting;
import app.ramkeeper.web.IntervalBar;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import app.ramkeeper.web.Say;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** One task: how it stands, and what the office decides about it. */
@Controller
@ForOffice
class TaskController {

    private static final String VIEW = "upkeep/task";

    private final Upkeep upkeep;
    private final TaskDecisions decisions;
    private final FilterChoices choices;
    private final JdbcClient jdbc;
    private final Say say;

    TaskController(Upkeep upkeep, TaskDecisions decisions, FilterChoices choices, JdbcClient jdbc, Say say) {
        this.upkeep = upkeep;
        this.decisions = decisions;
        this.choices = choices;
        this.jdbc = jdbc;
        this.say = say;
    }

    /** Whose delay it is. */
    public record WaitingForm(
            int version,
            @NotNull @Nullable Waiting waiting,
            @Size(max = 2000) @Nullable String note) {}

    /** Who does it here. */
    public record DecisionForm(
            int version, @NotNull @Nullable DoneBy doneBy) {}

    /** When it was last done before we knew. */
    public record LastDoneForm(
            int version,

            @NotNull @PastOrPresent @DateTimeFormat(iso = DateTimeFormat.ISO.DATE) @Nullable
            LocalDate on,

            boolean about) {}

    @GetMapping("/due/tasks/{id}")
    String task(@PathVariable UUID id, Model model) {
        DueTask task = fill(id, model);
        int version = version(id);
        model.addAttribute("waitingForm", new WaitingForm(version, task.waiting(), task.waitingNote()));
        model.addAttribute("decisionForm", new DecisionForm(version, task.doneBy()));
        model.addAttribute("lastDoneForm", new LastDoneForm(version, null, false));
        return VIEW;
    }

    @PostMapping("/due/tasks/{id}/waiting")
    ModelAndView waiting(
            @PathVariable UUID id,
            @Valid @ModelAttribute WaitingForm waitingForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        Waiting waiting = waitingForm.waiting();
        if (errors.hasErrors() || waiting == null) {
            return again(id, model);
        }
        decisions.wait(id, waitingForm.version(), waiting, waitingForm.note());
        return done(id, flash);
    }

    @PostMapping("/due/tasks/{id}/decision")
    ModelAndView decision(
            @PathVariable UUID id,
            @Valid @ModelAttribute DecisionForm decisionForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        DoneBy doneBy = decisionForm.doneBy();
        if (errors.hasErrors() || doneBy == null) {
            return again(id, model);
        }
        decisions.decide(id, decisionForm.version(), doneBy, new PersonId(user.person()));
        return done(id, flash);
    }

    @PostMapping("/due/tasks/{id}/last-done")
    ModelAndView lastDone(
            @PathVariable UUID id,
            @Valid @ModelAttribute LastDoneForm lastDoneForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        LocalDate on = lastDoneForm.on();
        if (errors.hasErrors() || on == null) {
            return again(id, model);
        }
        decisions.lastDone(id, lastDoneForm.version(), on, lastDoneForm.about());
        return done(id, flash);
    }

    private ModelAndView again(UUID id, Model model) {
        DueTask task = fill(id, model);
        int version = version(id);
        if (!model.containsAttribute("waitingForm")) {
            model.addAttribute("waitingForm", new WaitingForm(version, task.waiting(), task.waitingNote()));
        }
        if (!model.containsAttribute("decisionForm")) {
            model.addAttribute("decisionForm", new DecisionForm(version, task.doneBy()));
        }
        if (!model.containsAttribute("lastDoneForm")) {
            model.addAttribute("lastDoneForm", new LastDoneForm(version, null, false));
        }
        return Saving.again(VIEW, model);
    }

    private static ModelAndView done(UUID id, RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.of("upkeep.saved.savedTheDueDates"));
        return new ModelAndView("redirect:/due/tasks/" + id);
    }

    private DueTask fill(UUID id, Model model) {
        DueTask task = upkeep.tasks(List.of(id)).stream().findFirst().orElseThrow(() -> new Missing("task", id));
        model.addAttribute("task", task);
        model.addAttribute("bar", IntervalBar.of(task.from(), task.dueOn(), say.today()));
        choices.addTo(model);
        return task;
    }

    private int version(UUID id) {
        return jdbc.sql("select version from service_tasks where id = ?")
                .param(id)
                .query(Integer.class)
                .single();
    }
}
