package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.week.WorkingHours;
import app.ramkeeper.rounds.week.WorkingHours.Day;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
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
        TypedForm form = new TypedForm();
        for (Day day : hours.usual()) {
            form.set("from" + day.weekday(), day.fromTime())
                    .set("until" + day.weekday(), day.untilTime())
                    .set("longest" + day.weekday(), day.longestMinutes())
                    .set("break" + day.weekday(), day.breakMinutes());
        }
        return show(form, model);
    }

    private String show(TypedForm form, Model model) {
        Map<Integer, String> weekdays = new LinkedHashMap<>();
        for (DayOfWeek day : DayOfWeek.values()) {
            weekdays.put(day.getValue(), day.getDisplayName(TextStyle.FULL, Locale.UK));
        }
        model.addAttribute("weekdays", weekdays);
        model.addAttribute("holidays", hours.holidays());
        model.addAttribute("form", form);
        return "rounds/hours";
    }

    @PostMapping("/rounds/hours")
    ModelAndView save(@RequestParam MultiValueMap<String, String> posted, Model model, RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        List<@Nullable Day> days = new ArrayList<>();
        for (int weekday = 1; weekday <= 7; weekday++) {
            days.add(read(form, weekday));
        }
        if (form.hasProblems()) {
            return Saving.again(show(form, model), model);
        }
        for (int weekday = 1; weekday <= 7; weekday++) {
            hours.change(weekday, days.get(weekday - 1));
        }
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.savedPlansThatExist"));
        return new ModelAndView("redirect:/rounds/hours");
    }

    private static @Nullable Day read(TypedForm form, int weekday) {
        LocalTime from = form.time("from" + weekday);
        LocalTime until = form.time("until" + weekday);
        BigDecimal longest = form.number("longest" + weekday);
        BigDecimal pause = form.number("break" + weekday);
        if (from == null && until == null) {
            return null;
        }
        if (from == null || until == null || !until.isAfter(from)) {
            form.problem("until" + weekday, "A day ends after it starts: give both times, or neither for a day off.");
            return null;
        }
        int minutes = longest == null ? (until.toSecondOfDay() - from.toSecondOfDay()) / 60 : longest.intValue();
        int rest = pause == null ? 0 : pause.intValue();
        if (minutes < 30 || minutes > 1440) {
            form.problem("longest" + weekday, "Give between 30 minutes and a day (1440).");
        }
        if (rest < 0 || rest > 180) {
            form.problem("break" + weekday, "Give between 0 and 180 minutes.");
        }
        return new Day(weekday, from, until, minutes, rest);
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
        hours.addHoliday(day, name);
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
