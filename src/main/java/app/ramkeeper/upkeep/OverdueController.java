package app.ramkeeper.upkeep;

import app.ramkeeper.identity.ForManager;
import app.ramkeeper.upkeep.rules.Waiting;
import app.ramkeeper.web.IntervalBar;
import app.ramkeeper.web.Say;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The manager's list: what is overdue for a valve-rubber change, or for any other kind of task. */
@Controller
@ForManager
class OverdueController {

    private final OverdueQuery query;
    private final FilterChoices choices;
    private final Say say;

    OverdueController(OverdueQuery query, FilterChoices choices, Say say) {
        this.query = query;
        this.choices = choices;
        this.say = say;
    }

    /** An overdue task with its interval bar. */
    public record Barred(OverdueQuery.Row row, IntervalBar bar) {}

    @GetMapping("/overdue")
    String overdue(
            @RequestParam(required = false) @Nullable UUID kind,
            @RequestParam(required = false) @Nullable UUID depot,
            @RequestParam(required = false) @Nullable Waiting waiting,
            Model model) {
        String whose = waiting == null ? null : waiting.name();
        var rows = query.rows(kind, depot, whose);
        model.addAttribute(
                "rows",
                rows.stream()
                        .map(row -> new Barred(row, IntervalBar.of(row.from(), row.dueOn(), say.today())))
                        .toList());
        model.addAttribute("more", rows.size() == OverdueQuery.MOST);
        model.addAttribute("bands", query.bands(kind, depot, whose));
        model.addAttribute("kind", kind);
        model.addAttribute("depot", depot);
        model.addAttribute("waiting", waiting);
        choices.addTo(model);
        return "upkeep/overdue";
    }
}
