package app.ramkeeper.identity.people;

import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.identity.People;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Who is away when, for who plans. */
@Controller
@ForRegister
@RequestMapping("/days-away")
class DaysAwayPages {

    private final DaysAway away;
    private final People people;
    private final Saving saving;
    private final Clock clock;

    DaysAwayPages(DaysAway away, People people, Saving saving, Clock clock) {
        this.away = away;
        this.people = people;
        this.saving = saving;
        this.clock = clock;
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("form", new LeaveForm(null, null, null, null));
        return page(model);
    }

    @PostMapping
    ModelAndView add(
            @Valid @ModelAttribute("form") LeaveForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        UUID person = form.person();
        if (person == null) {
            errors.rejectValue("person", "identity.leave.who");
        }
        if (person == null || !saving.did(errors, () -> away.add(person, form))) {
            return Saving.again(page(model), model);
        }
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.daysAwaySaved"));
        return new ModelAndView("redirect:/days-away");
    }

    @PostMapping("/{person}/{leave}/remove")
    String remove(@PathVariable UUID person, @PathVariable UUID leave, RedirectAttributes redirect) {
        away.remove(person, leave);
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.daysAwayRemoved"));
        return "redirect:/days-away";
    }

    private String page(Model model) {
        model.addAttribute("coming", away.coming());
        model.addAttribute("people", People.choices(people.fieldPeopleOn(LocalDate.now(clock))));
        return "identity/days-away";
    }
}
