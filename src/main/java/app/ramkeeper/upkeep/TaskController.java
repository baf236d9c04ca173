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
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
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
    private final TaskRule rules;
    private final Say say;

    TaskController(Upkeep upkeep, TaskDecisions decisions, FilterChoices choices, TaskRule rules, Say say) {
        this.upkeep = upkeep;
        this.decisions = decisions;
        this.choices = choices;
        this.rules = rules;
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
        int version = version(model);
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
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        Waiting waiting = waitingForm.waiting();
        if (errors.hasErrors() || waiting == null) {
            return again(id, model);
        }
        decisions.wait(id, waitingForm.version(), waiting, waitingForm.note(), new PersonId(user.person()));
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
        refuseOdd(id, on, errors);
        if (errors.hasErrors() || on == null) {
            return again(id, model);
        }
        decisions.lastDone(id, lastDoneForm.version(), on, lastDoneForm.about());
        return done(id, flash);
    }

    /** Takes a day back that was stated without a report. */
    @PostMapping("/due/tasks/{id}/last-done/forget")
    ModelAndView forget(@PathVariable UUID id, @RequestParam int version, RedirectAttributes flash) {
        decisions.forgetStated(id, version);
        return done(id, flash);
    }

    /** A day that cannot be, as an import refuses it too. */
    private void refuseOdd(UUID id, @Nullable LocalDate on, BindingResult errors) {
        if (on == null || errors.hasErrors()) {
            return;
        }
        LocalDate commissioned = decisions.commissioned(List.of(id)).get(id);
        if (commissioned != null && on.isBefore(commissioned)) {
            errors.rejectValue("on", "task.lastDone.before", new Object[] {Say.day(commissioned)}, null);
        } else if (on.getYear() < TaskDecisions.FIRST_YEAR) {
            errors.rejectValue("on", "task.lastDone.old");
        }
    }

    private ModelAndView again(UUID id, Model model) {
        DueTask task = fill(id, model);
        int version = version(model);
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

    private static int version(Model model) {
        return ((TaskRule.Said) Objects.requireNonNull(model.getAttribute("said"))).version();
    }

    private DueTask fill(UUID id, Model model) {
        DueTask task = upkeep.tasks(List.of(id)).stream().findFirst().orElseThrow(() -> new Missing("task", id));
        model.addAttribute("task", task);
        model.addAttribute("bar", IntervalBar.of(task.from(), task.dueOn(), say.today()));
        TaskRule.Said said = rules.said(id);
        model.addAttribute("said", said);
        model.addAttribute("rule", rules.of(task.kindId(), said));
        choices.addTo(model);
        return task;
    }
}
