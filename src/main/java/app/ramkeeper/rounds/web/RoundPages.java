package app.ramkeeper.rounds.web;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.People;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.UUID;
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

/** One technician's day of the week, and a visit added by hand. */
@Controller
@ForOffice
class RoundPages {

    private final WeekStore weeks;
    private final WeekEdits edits;
    private final Fleet fleet;
    private final People people;
    private final Mondays mondays;

    RoundPages(WeekStore weeks, WeekEdits edits, Fleet fleet, People people, Mondays mondays) {
        this.weeks = weeks;
        this.edits = edits;
        this.fleet = fleet;
        this.people = people;
        this.mondays = mondays;
    }

    @GetMapping("/rounds/{monday}/rounds/{person}/{day}")
    String show(@PathVariable LocalDate monday, @PathVariable UUID person, @PathVariable LocalDate day, Model model) {
        return show(monday, person, day, new TypedForm(), model);
    }

    private String show(LocalDate monday, UUID person, LocalDate day, TypedForm form, Model model) {
        Week week = weeks.load(mondays.known(monday));
        TechDay round = week.round(person, day).orElseThrow(() -> new Missing("round", day));
        List<Choice> mates = people.fieldPeopleOn(day).stream()
                .filter(p -> !p.id().equals(person))
                .map(p -> new Choice(p.id().toString(), p.name()))
                .toList();
        if (round.mateId() != null) {
            form.set("mate", round.mateId());
        }
        model.addAttribute("monday", monday);
        model.addAttribute("plan", week.plan());
        model.addAttribute("round", round);
        model.addAttribute("times", week.times(round.key()));
        model.addAttribute("mates", mates);
        model.addAttribute("form", form);
        model.addAttribute("sketch", Sketch.of(round, week.times(round.key())));
        return "rounds/round";
    }

    @PostMapping("/rounds/{monday}/locks")
    String lock(
            By by,
            @RequestParam(required = false) @Nullable UUID person,
            @RequestParam(required = false) @Nullable LocalDate day,
            @RequestParam boolean locked,
            RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.said(edits.lockRounds(by, person, day, locked)));
        return WeekPages.back(by.monday());
    }

    @PostMapping("/rounds/{monday}/rounds/{person}/{day}/pair")
    ModelAndView pair(
            By by,
            @PathVariable UUID person,
            @PathVariable LocalDate day,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        UUID mate = form.uuid("mate");
        if (mate != null && people.fieldPeopleOn(day).stream().noneMatch(p -> p.id().equals(mate))) {
            form.problem("mate", "Choose one from the list.");
        }
        if (form.hasProblems()) {
            return Saving.again(show(by.monday(), person, day, form, model), model);
        }
        flash.addFlashAttribute("saved", Saved.said(edits.pair(by, person, day, mate)));
        return new ModelAndView(WeekPages.back(by.monday()));
    }

    @PostMapping("/rounds/{monday}/rounds/{person}/{day}/late")
    ModelAndView late(
            By by,
            @PathVariable UUID person,
            @PathVariable LocalDate day,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        LocalTime at = form.time("at");
        if (form.hasProblems()) {
            return Saving.again(show(by.monday(), person, day, form, model), model);
        }
        flash.addFlashAttribute(
                "saved", Saved.said(edits.late(by, person, day, at == null ? null : at.toSecondOfDay() / 60)));
        return new ModelAndView("redirect:/rounds/" + by.monday() + "/rounds/" + person + "/" + day);
    }

    @GetMapping("/rounds/{monday}/add")
    String search(
            @PathVariable LocalDate monday,
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(required = false) @Nullable UUID site,
            Model model) {
        return search(monday, q, site, new TypedForm().set("minutes", 60), model);
    }

    private String search(LocalDate monday, @Nullable String q, @Nullable UUID site, TypedForm form, Model model) {
        Week week = weeks.load(mondays.known(monday));
        model.addAttribute("monday", monday);
        model.addAttribute("plan", week.plan());
        model.addAttribute("q", q);
        model.addAttribute("form", form);
        model.addAttribute("site", site == null ? null : fleet.site(new SiteId(site)));
        model.addAttribute(
                "here",
                site == null
                        ? List.of()
                        : week.stops().stream()
                                .filter(s -> s.siteId().equals(site))
                                .toList());
        model.addAttribute("found", q == null || q.isBlank() ? List.of() : fleet.search(q, 8));
        return "rounds/add";
    }

    @PostMapping("/rounds/{monday}/add")
    ModelAndView add(
            By by,
            @RequestParam UUID site,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        BigDecimal minutes = form.number("minutes");
        String why = form.text("why", 200);
        if (why == null) {
            form.problem("why", "Say what the visit is for.");
        }
        if (form.error("minutes") == null && (minutes == null || minutes.intValue() < 5 || minutes.intValue() > 1440)) {
            form.problem("minutes", "Give between 5 minutes and a day (1440).");
        }
        if (form.hasProblems() || why == null || minutes == null) {
            return Saving.again(search(by.monday(), null, site, form, model), model);
        }
        UUID added = edits.add(by, new SiteId(site), minutes.intValue(), why);
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.addedChooseWhereIt"));
        return new ModelAndView("redirect:/rounds/" + by.monday() + "/stops/" + added);
    }
}
