package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.week.WorkingHours;
import app.ramkeeper.rounds.week.WorkingHours.Day;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.time.LocalDate;
import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Working hours by weekday and public holidays, which every plan keeps to. */
@Controller
@ForOffice
class HoursPages {

    private final WorkingHours hours;
    private final Mondays mondays;

    HoursPages(WorkingHours hours, Mondays mondays) {
        this.hours = hours;
        this.mondays = mondays;
    }

    @GetMapping("/rounds/hours")
    String show(Model model) {
        return show(HoursForm.of(hours.usual()), model);
    }

    private String show(TypedForm form, Model model) {
        model.addAttribute("weekdays", HoursForm.weekdays());
        model.addAttribute("team", hours.team());
        model.addAttribute("holidays", hours.holidays());
        model.addAttribute("form", form);
        return "rounds/hours";
    }

    @PostMapping("/rounds/hours")
    ModelAndView save(@RequestParam MultiValueMap<String, String> posted, Model model, RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        List<Day> days = HoursForm.read(form);
        if (form.hasProblems()) {
            return Saving.again(show(form, model), model);
        }
        if (!hours.change(days, form.value("seen"))) {
            List<Day> present = hours.usual();
            form.set("seen", WorkingHours.edition(present));
            return HoursForm.between(days, present).page(show(form, model), model);
        }
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.savedPlansThatExist"));
        return new ModelAndView("redirect:/rounds/hours");
    }

    @PostMapping("/rounds/holidays")
    ModelAndView add(@RequestParam MultiValueMap<String, String> posted, Model model, RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        LocalDate day = form.date("day");
        String name = form.text("name", 100);
        if (form.error("day") == null
                && (day == null
                        || day.isBefore(mondays.today().minusYears(2))
                        || day.isAfter(mondays.today().plusYears(5)))) {
            form.problem("day", "Give a day within five years.");
        }
        if (name == null) {
            form.problem("name", "Give the holiday's name.");
        }
        if (form.hasProblems() || day == null || name == null) {
            show(model);
            model.addAttribute("holidayForm", form);
            return Saving.again("rounds/hours", model);
        }
        String known = hours.addHoliday(day, name).orElse(null);
        if (known != null) {
            form.problem("name", "This day is " + known + " already. To give it another name remove it first.");
            show(model);
            model.addAttribute("holidayForm", form);
            return Saving.again("rounds/hours", model);
        }
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.saved"));
        return new ModelAndView("redirect:/rounds/hours");
    }

    @PostMapping("/rounds/holidays/{day}/remove")
    String remove(@PathVariable LocalDate day, RedirectAttributes flash) {
        hours.removeHoliday(day);
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.removed"));
        return "redirect:/rounds/hours";
    }
}
