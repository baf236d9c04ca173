package app.ramkeeper.visits.fieldday;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.FieldDays;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import app.ramkeeper.web.Say;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import java.time.LocalTime;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** "I am leaving, back by ..." and "I am back". */
@Controller
@ForField
class CheckInController {

    private static final String VIEW = "visits/check-in";

    private final FieldDays days;
    private final Saving saving;
    private final Say say;

    CheckInController(FieldDays days, Saving saving, Say say) {
        this.days = days;
        this.saving = saving;
        this.say = say;
    }

    /** The time somebody means to be back, today. */
    public record LeaveForm(
            @NotNull @DateTimeFormat(iso = DateTimeFormat.ISO.TIME) @Nullable
            LocalTime dueBack) {}

    @PostMapping("/my-day/leave")
    ModelAndView leave(
            @Valid @ModelAttribute("leaveForm") LeaveForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        PersonId person = new PersonId(user.person());
        if (!saving.did(errors, () -> days.leave(person, Objects.requireNonNull(form.dueBack())))) {
            model.addAttribute("fieldDay", days.today(person).orElse(null));
            return Saving.again(VIEW, model).addObject("leaveForm", form);
        }
        flash.addFlashAttribute("saved", Saved.of("visits.saved.dueBackByGood", say.time(form.dueBack())));
        return new ModelAndView("redirect:/my-day");
    }

    @PostMapping("/my-day/back")
    String back(RedirectAttributes flash, @AuthenticationPrincipal CurrentUser user) {
        days.back(new PersonId(user.person()));
        flash.addFlashAttribute("saved", Saved.of("visits.saved.youAreBack"));
        return "redirect:/my-day";
    }
}
