package app.ramkeeper.upkeep;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.CsvDownload;
import app.ramkeeper.web.IntervalBar;
import app.ramkeeper.web.Say;
import app.ramkeeper.web.Slice;
import jakarta.servlet.http.HttpServletResponse;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import org.springframework.web.util.UriComponentsBuilder;

/** The due list across all kinds of task: what is due where, and rows to pick for a visit. */
@Controller
@ForOffice
class DueController {

    private static final List<String> HEADER = List.of(
            "site",
            "locality",
            "depot",
            "install",
            "pump",
            "task",
            "state",
            "due on",
            "window from",
            "window until",
            "days late",
            "last done on",
            "waiting",
            "note",
            "planned on");

    private final DueListQuery query;
    private final FilterChoices choices;
    private final Say say;

    DueController(DueListQuery query, FilterChoices choices, Say say) {
        this.query = query;
        this.choices = choices;
        this.say = say;
    }

    /** A task with its interval bar. */
    public record Row(DueTask task, IntervalBar bar) {}

    @GetMapping("/due")
    String due(DueFilter filter, Model model, HttpServletResponse response) {
        List<String> problems = filter.problems();
        if (!problems.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        model.addAttribute("problems", problems);
        Slice<DueTask> slice = query.page(filter);
        model.addAttribute("filter", filter);
        model.addAttribute("slice", slice);
        model.addAttribute("rows", slice.rows().stream().map(this::withBar).toList());
        model.addAttribute("query", address(filter, null));
        model.addAttribute("next", address(filter, slice.next()));
        choices.addTo(model);
        return "upkeep/due";
    }

    @GetMapping("/due.csv")
    ResponseEntity<StreamingResponseBody> csv(DueFilter filter) {
        return CsvDownload.of(
                "due-" + say.today() + ".csv",
                HEADER,
                query.all(filter).stream().map(this::cells));
    }

    private static String address(DueFilter filter, @Nullable String after) {
        UriComponentsBuilder address = UriComponentsBuilder.newInstance();
        filter.words().forEach((name, value) -> address.queryParam(name, "{" + name + "}"));
        if (after != null) {
            address.queryParam("after", after);
        }
        String query = address.encode().buildAndExpand(filter.words()).toUri().getRawQuery();
        return query == null || query.isEmpty() ? "" : "?" + query;
    }

    private List<@Nullable Object> cells(DueTask task) {
        Long late = task.dueOn() == null ? null : ChronoUnit.DAYS.between(task.dueOn(), say.today());
        return Arrays.asList(
                task.siteName(),
                task.locality(),
                task.depotName(),
                task.installName(),
                task.pumpName(),
                task.kindName(),
                choices.stateWord(task),
                task.dueOn(),
                task.windowFrom(),
                task.windowUntil(),
                late,
                task.lastDoneOn(),
                choices.waitingWord(task),
                task.waitingNote(),
                task.plannedOn());
    }

    private Row withBar(DueTask task) {
        return new Row(task, IntervalBar.of(task.from(), task.dueOn(), say.today()));
    }
}
