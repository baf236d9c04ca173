package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.week.Comparison;
import app.ramkeeper.rounds.week.Moved.Change;
import app.ramkeeper.rounds.week.Versions;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Choice;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/** Two versions of a week's plan, compared. */
@Controller
@ForOffice
class ComparePages {

    private final WeekStore weeks;
    private final Versions versions;
    private final Mondays mondays;

    ComparePages(WeekStore weeks, Versions versions, Mondays mondays) {
        this.weeks = weeks;
        this.versions = versions;
        this.mondays = mondays;
    }

    /** Without a choice the last other plan against the present one: the published one, if visits stand elsewhere since. */
    @GetMapping("/rounds/{monday}/compare")
    String compare(
            @PathVariable LocalDate monday,
            @RequestParam(required = false) @Nullable Integer one,
            @RequestParam(required = false) @Nullable Integer other,
            Model model) {
        WeekPlan plan = weeks.plan(mondays.known(monday)).orElseThrow(() -> new Missing("week", monday));
        List<Change> changes = versions.since(plan.id(), 0);
        int after = other == null ? plan.version() : known(other, plan);
        Integer before = one != null
                ? Integer.valueOf(known(one, plan))
                : versions.lastOther(plan, after).orElse(other == null ? null : Integer.valueOf(plan.version()));
        model.addAttribute("monday", monday);
        if (before == null) {
            return "rounds/compare";
        }
        model.addAttribute(
                "versions",
                changes.stream()
                        .map(c -> new Choice(Integer.toString(c.no()), c.no() + ": " + c.what()))
                        .toList());
        model.addAttribute("form", new TypedForm().set("one", before).set("other", after));
        model.addAttribute("comparison", Comparison.of(weeks.loadAs(plan, before), weeks.loadAs(plan, after)));
        return "rounds/compare";
    }

    private static int known(int version, WeekPlan plan) {
        if (version < 1 || version > plan.version()) {
            throw new Missing("version of the plan", version);
        }
        return version;
    }
}
