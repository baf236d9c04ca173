package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.out.Publishing;
import app.ramkeeper.rounds.run.Beside;
import app.ramkeeper.rounds.run.WeekRun;
import app.ramkeeper.rounds.run.WeekRuns;
import app.ramkeeper.rounds.week.Preparation;
import app.ramkeeper.rounds.week.Versions;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.Saved;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page of a week, and what is done to the week as a whole. */
@Controller
@ForOffice
class WeekPages {

    private final WeekStore weeks;
    private final Preparation preparation;
    private final WeekEdits edits;
    private final WeekRuns runs;
    private final Versions versions;
    private final Publishing publishing;
    private final Mondays mondays;

    WeekPages(
            WeekStore weeks,
            Preparation preparation,
            WeekEdits edits,
            WeekRuns runs,
            Versions versions,
            Publishing publishing,
            Mondays mondays) {
        this.weeks = weeks;
        this.preparation = preparation;
        this.edits = edits;
        this.runs = runs;
        this.versions = versions;
        this.publishing = publishing;
        this.mondays = mondays;
    }

    @GetMapping("/rounds")
    String now(@RequestParam(required = false) @Nullable LocalDate day) {
        return "redirect:/rounds/" + (day == null ? mondays.planned() : Mondays.of(day));
    }

    @GetMapping("/rounds/{monday}")
    String week(@PathVariable LocalDate monday, @RequestParam(required = false) @Nullable UUID person, Model model) {
        mondays.known(monday);
        model.addAttribute("monday", monday);
        model.addAttribute("today", mondays.today());
        WeekPlan plan = weeks.plan(monday).orElse(null);
        model.addAttribute("plan", plan);
        if (plan != null && plan.version() > 0) {
            Week week = weeks.load(plan);
            WeekView view = WeekView.of(week, mondays.today());
            model.addAttribute("week", view);
            model.addAttribute("calls", week.calls());
            model.addAttribute("against", publishing.against(week));
            model.addAttribute("only", person);
            Beside beside = runs.beside(plan);
            model.addAttribute("run", beside.run());
            model.addAttribute("history", beside.history());
        }
        return "rounds/week";
    }

    @PostMapping("/rounds/{monday}/prepare")
    String prepare(
            @PathVariable LocalDate monday, @AuthenticationPrincipal CurrentUser user, RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.said(preparation.prepare(mondays.known(monday), user.person())));
        return back(monday);
    }

    @PostMapping("/rounds/{monday}/runs")
    String run(
            @PathVariable LocalDate monday,
            @RequestParam WeekRuns.Kind kind,
            @RequestParam(required = false) @Nullable Long seed,
            @AuthenticationPrincipal CurrentUser user) {
        runs.ask(mondays.known(monday), kind, seed == null ? 1 : seed, user);
        return back(monday);
    }

    @PostMapping("/rounds/{monday}/runs/stop")
    String stop(@PathVariable LocalDate monday) {
        runs.stop(mondays.known(monday));
        return back(monday);
    }

    @PostMapping("/rounds/{monday}/runs/{run}/take-over")
    String takeOver(By by, @PathVariable UUID run, RedirectAttributes flash) {
        runs.takeOver(by, run);
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.takenOver"));
        return back(by.monday());
    }

    /** How far the optimiser is, and whether somebody has changed the plan since the page was made. */
    @GetMapping("/rounds/{monday}/news")
    String news(@PathVariable LocalDate monday, @RequestParam int seen, Model model) {
        mondays.known(monday);
        WeekPlan plan = weeks.plan(monday).orElseThrow(() -> new Missing("week", monday));
        WeekRun run = runs.last(plan).orElse(null);
        model.addAttribute("monday", monday);
        model.addAttribute("plan", plan);
        model.addAttribute("run", run);
        model.addAttribute("seen", seen);
        model.addAttribute("theirs", plan.version() > seen ? versions.since(plan.id(), seen) : List.of());
        return "rounds/news :: news";
    }

    @PostMapping("/rounds/{monday}/undo")
    String undo(By by, RedirectAttributes flash) {
        edits.undo(by);
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.undone"));
        return back(by.monday());
    }

    static String back(LocalDate monday) {
        return "redirect:/rounds/" + monday;
    }
}
