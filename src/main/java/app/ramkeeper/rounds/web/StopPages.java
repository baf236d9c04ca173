package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.out.Publishing;
import app.ramkeeper.rounds.week.DayTimes;
import app.ramkeeper.rounds.week.Openings;
import app.ramkeeper.rounds.week.RoundKey;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
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

/** One visit of the week: where it could go and what that would do, and the office's hand on it. */
@Controller
@ForOffice
class StopPages {

    private static final int BEST = 3;

    private final WeekStore weeks;
    private final WeekEdits edits;
    private final Publishing publishing;
    private final Mondays mondays;

    StopPages(WeekStore weeks, WeekEdits edits, Publishing publishing, Mondays mondays) {
        this.weeks = weeks;
        this.edits = edits;
        this.publishing = publishing;
        this.mondays = mondays;
    }

    @GetMapping("/rounds/{monday}/stops/{id}")
    String show(@PathVariable LocalDate monday, @PathVariable UUID id, Model model) {
        return show(monday, id, new TypedForm(), model);
    }

    private String show(LocalDate monday, UUID id, TypedForm form, Model model) {
        Week week = weeks.load(mondays.known(monday));
        Stop stop = week.stop(id).orElseThrow(() -> new Missing("visit of the week", id));
        Openings openings = openings(week);
        model.addAttribute("monday", monday);
        model.addAttribute("plan", week.plan());
        model.addAttribute("stop", stop);
        model.addAttribute("call", stop.over() ? null : week.calls().get(stop.siteId()));
        model.addAttribute("keptOut", week.drive().rules().worksKeepOut(stop));
        model.addAttribute("form", form);
        model.addAttribute(
                "all", stop.over() ? List.of() : openings.byPerson(stop).values());
        if (stop.personId() != null && stop.day() != null) {
            RoundKey key = new RoundKey(stop.personId(), stop.day());
            DayTimes times = week.times(key);
            model.addAttribute("round", week.round(key.person(), key.day()).orElse(null));
            model.addAttribute("line", times.lineOf(id));
            model.addAttribute("breaches", times.at(stop));
            model.addAttribute("earlier", neighbour(week.stopsOf(key), stop, -1));
            model.addAttribute("later", neighbour(week.stopsOf(key), stop, 1));
            model.addAttribute("afterNext", neighbour(week.stopsOf(key), stop, 2));
        }
        model.addAttribute("best", stop.over() ? List.of() : better(week, stop, openings));
        return "rounds/stop";
    }

    /** The best places but the one where it stands. */
    private static List<Openings.Opening> better(Week week, Stop stop, Openings openings) {
        Stop next = stop.personId() == null || stop.day() == null
                ? null
                : neighbour(week.stopsOf(new RoundKey(stop.personId(), stop.day())), stop, 1);
        return openings.best(stop, BEST + 1).stream()
                .filter(o -> !(o.round().personId().equals(stop.personId())
                        && o.round().day().equals(stop.day())
                        && Objects.equals(id(o.before()), id(next))))
                .limit(BEST)
                .toList();
    }

    private static @Nullable UUID id(@Nullable Stop stop) {
        return stop == null ? null : stop.id();
    }

    private Openings openings(Week week) {
        return new Openings(week, mondays.today(), mondays.minute());
    }

    /** The visit that comes after in the best place of a round; null for the last place. */
    private @Nullable UUID bestBefore(LocalDate monday, UUID id, UUID person, LocalDate day) {
        Week week = weeks.load(mondays.known(monday));
        Stop stop = week.stop(id).orElseThrow(() -> new Missing("visit of the week", id));
        return week.round(person, day)
                .map(round -> openings(week).in(round, stop))
                .map(Openings.Opening::before)
                .map(Stop::id)
                .orElse(null);
    }

    private static @Nullable Stop neighbour(List<Stop> stops, Stop stop, int step) {
        int at = stops.stream().map(Stop::id).toList().indexOf(stop.id()) + step;
        return at < 0 || at >= stops.size() ? null : stops.get(at);
    }

    /** Where to: "to" names a round as person/day; "before" the visit that comes after, empty for the last place, absent for the best. */
    @PostMapping("/rounds/{monday}/stops/{id}/move")
    ModelAndView move(
            By by,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        String[] to = form.value("to").split("/", 2);
        UUID person = new TypedForm().set("p", to[0]).uuid("p");
        LocalDate day = to.length < 2 ? null : new TypedForm().set("d", to[1]).date("d");
        String excuse = form.text("excuse", 500);
        if (person == null || day == null) {
            form.problem("to", "Choose whose round of which day.");
        }
        if (form.hasProblems() || person == null || day == null) {
            return Saving.again(show(by.monday(), id, form, model), model);
        }
        UUID before = posted.containsKey("before") ? form.uuid("before") : bestBefore(by.monday(), id, person, day);
        String moved = edits.move(by, id, person, day, before, excuse);
        flash.addFlashAttribute("saved", form.ticked("tell") ? Saved.said(moved + " " + tell(by)) : Saved.said(moved));
        return back(by.monday());
    }

    /** Publishes what was just done; what stands against it is said, and the move stays. */
    private String tell(By by) {
        int version = weeks.plan(by.monday()).orElseThrow().version();
        try {
            return publishing.publish(new By(by.monday(), version, by.person()));
        } catch (Conflict not) {
            return String.valueOf(not.getMessage());
        }
    }

    @PostMapping("/rounds/{monday}/stops/{id}/set-aside")
    ModelAndView setAside(
            By by,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        String reason = form.text("reason", 500);
        if (reason == null) {
            form.problem("reason", "Say why it does not go into this week.");
        }
        if (form.hasProblems() || reason == null) {
            return Saving.again(show(by.monday(), id, form, model), model);
        }
        flash.addFlashAttribute("saved", Saved.said(edits.setAside(by, id, reason)));
        return back(by.monday());
    }

    @PostMapping("/rounds/{monday}/stops/{id}/offer")
    ModelAndView offer(By by, @PathVariable UUID id, RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.said(edits.offerAgain(by, id)));
        return back(by.monday());
    }

    @PostMapping("/rounds/{monday}/stops/{id}/minutes")
    String takeMinutes(By by, @PathVariable UUID id, RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.said(edits.takeMinutes(by, id)));
        return "redirect:/rounds/" + by.monday() + "/stops/" + id;
    }

    @PostMapping("/rounds/{monday}/stops/{id}/lock")
    ModelAndView lock(By by, @PathVariable UUID id, @RequestParam boolean locked, RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.said(edits.lock(by, id, locked)));
        return back(by.monday());
    }

    @PostMapping("/rounds/{monday}/stops/{id}/excuse")
    ModelAndView excuse(
            By by,
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        String reason = form.text("excuse", 500);
        if (form.hasProblems()) {
            return Saving.again(show(by.monday(), id, form, model), model);
        }
        flash.addFlashAttribute("saved", Saved.said(edits.excuse(by, id, reason)));
        return back(by.monday());
    }

    private static ModelAndView back(LocalDate monday) {
        return new ModelAndView(WeekPages.back(monday));
    }
}
