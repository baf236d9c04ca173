package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.People.PersonCard;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.week.WorkingHours;
import app.ramkeeper.rounds.week.WorkingHours.Day;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A technician's own working hours by weekday, instead of the company's. */
@Controller
@ForOffice
class OwnHoursPages {

    private final WorkingHours hours;
    private final People people;

    OwnHoursPages(WorkingHours hours, People people) {
        this.hours = hours;
        this.people = people;
    }

    @GetMapping("/rounds/hours/{person}")
    String show(@PathVariable UUID person, Model model) {
        PersonCard who = known(person);
        List<Day> own = hours.own(who.personId());
        TypedForm form = HoursForm.of(own.isEmpty() ? hours.usual() : own).set("seen", WorkingHours.edition(own));
        return show(who, form, !own.isEmpty(), model);
    }

    private static String show(PersonCard who, TypedForm form, boolean own, Model model) {
        model.addAttribute("weekdays", HoursForm.weekdays());
        model.addAttribute("who", who);
        model.addAttribute("own", own);
        model.addAttribute("form", form);
        return "rounds/own-hours";
    }

    @PostMapping("/rounds/hours/{person}")
    ModelAndView save(
            @PathVariable UUID person,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        PersonCard who = known(person);
        TypedForm form = new TypedForm(posted);
        List<Day> days = HoursForm.read(form);
        if (days.isEmpty() && !form.hasProblems()) {
            form.problem(
                    "from1",
                    "Give the hours of one day at least. For time away put down leave; for the company's hours remove the own ones.");
        }
        if (form.hasProblems()) {
            boolean own = !hours.own(who.personId()).isEmpty();
            return Saving.again(show(who, form, own, model), model);
        }
        if (!hours.changeOwn(who.personId(), days, form.value("seen"))) {
            return lost(who, form, days, model);
        }
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.ownHours", who.name()));
        return new ModelAndView("redirect:/rounds/hours");
    }

    @PostMapping("/rounds/hours/{person}/usual")
    ModelAndView asTheCompany(
            @PathVariable UUID person,
            @RequestParam(defaultValue = "") String seen,
            Model model,
            RedirectAttributes flash) {
        PersonCard who = known(person);
        if (!hours.changeOwn(who.personId(), List.of(), seen)) {
            return lost(who, HoursForm.of(hours.own(who.personId())), List.of(), model);
        }
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.asCompany", who.name()));
        return new ModelAndView("redirect:/rounds/hours");
    }

    private ModelAndView lost(PersonCard who, TypedForm form, List<Day> mine, Model model) {
        List<Day> present = hours.own(who.personId());
        form.set("seen", WorkingHours.edition(present));
        return HoursForm.between(mine, present).page(show(who, form, !present.isEmpty(), model), model);
    }

    private PersonCard known(UUID person) {
        return people.byId(new PersonId(person)).orElseThrow(() -> new Missing("person", person));
    }
}
