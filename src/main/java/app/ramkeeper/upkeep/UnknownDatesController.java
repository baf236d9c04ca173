package app.ramkeeper.upkeep;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.upkeep.DueFilter.DueState;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import app.ramkeeper.web.Say;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The fix list of last dates that nobody knows, after an import as a rule: many are put down at once. */
@Controller
@ForOffice
class UnknownDatesController {

    private static final String VIEW = "upkeep/unknown";
    private static final String FIELD = "on.";

    private final DueListQuery query;
    private final TaskDecisions decisions;
    private final Say say;

    UnknownDatesController(DueListQuery query, TaskDecisions decisions, Say say) {
        this.query = query;
        this.decisions = decisions;
        this.say = say;
    }

    @GetMapping("/due/unknown")
    String list(@RequestParam(required = false) @Nullable String after, Model model) {
        return list(after, Map.of(), Map.of(), model);
    }

    private String list(@Nullable String after, Map<String, String> typed, Map<String, String> problems, Model model) {
        DueFilter unknown =
                new DueFilter(null, DueState.UNKNOWN, null, null, null, null, null, null, null, null, null, after);
        model.addAttribute("slice", query.page(unknown));
        model.addAttribute("after", after);
        model.addAttribute("typed", typed);
        model.addAttribute("problems", problems);
        return VIEW;
    }

    @PostMapping("/due/unknown")
    ModelAndView put(@RequestParam Map<String, String> posted, Model model, RedirectAttributes flash) {
        Map<String, String> typed = new LinkedHashMap<>();
        Map<String, String> problems = new HashMap<>();
        Map<UUID, LocalDate> days = new LinkedHashMap<>();
        posted.forEach((name, value) -> {
            if (name.startsWith(FIELD) && !value.isBlank()) {
                typed.put(name.substring(FIELD.length()), value);
            }
        });
        typed.forEach((task, value) -> read(task, value.strip(), days, problems));
        Map<UUID, LocalDate> commissioned = decisions.commissioned(days.keySet());
        days.forEach((task, day) -> {
            LocalDate since = commissioned.get(task);
            if (since != null && day.isBefore(since)) {
                problems.putIfAbsent(task.toString(), "unknown.before");
            }
        });
        String after = posted.get("after");
        if (!problems.isEmpty()) {
            return Saving.again(list(after, typed, problems, model), model);
        }
        flash.addFlashAttribute("saved", Saved.of("unknown.saved", decisions.lastDoneWhereUnknown(days)));
        return new ModelAndView("redirect:/due/unknown");
    }

    private void read(String task, String value, Map<UUID, LocalDate> days, Map<String, String> problems) {
        try {
            LocalDate day = LocalDate.parse(value);
            days.put(UUID.fromString(task), day);
            if (day.isAfter(say.today())) {
                problems.put(task, "unknown.future");
            } else if (day.getYear() < TaskDecisions.FIRST_YEAR) {
                problems.put(task, "unknown.old");
            }
        } catch (DateTimeParseException | IllegalArgumentException unreadable) {
            problems.put(task, "unknown.bad");
        }
    }
}
