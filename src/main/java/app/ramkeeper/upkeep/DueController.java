package app.ramkeeper.upkeep;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.CsvDownload;
import app.ramkeeper.web.IntervalBar;
import app.ramkeeper.web.Say;
import app.ramkeeper.web.Slice;
import jakarta.servlet.http.HttpServletResponse;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
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
    String due(
            @Nullable DueFilter filter,
            BindingResult errors,
            @RequestParam MultiValueMap<String, String> typed,
            HttpServletResponse response,
            Model model) {
        Map<String, String> wrong = wrong(filter, errors, typed);
        model.addAttribute("typed", typed.toSingleValueMap());
        model.addAttribute("wrong", wrong);
        choices.addTo(model, filter == null ? null : filter.customerId());
        if (filter == null || !wrong.isEmpty()) {
            response.setStatus(HttpStatus.BAD_REQUEST.value());
            model.addAttribute("slice", new Slice<DueTask>(List.of(), null, 0));
            return "upkeep/due";
        }
        Slice<DueTask> slice = query.page(filter);
        model.addAttribute("slice", slice);
        model.addAttribute("rows", slice.rows().stream().map(this::withBar).toList());
        model.addAttribute("query", address(filter, null));
        model.addAttribute("next", address(filter, slice.next()));
        return "upkeep/due";
    }

    /** What cannot be read or cannot be, by field, with the key of what to say. */
    private static Map<String, String> wrong(
            @Nullable DueFilter filter, BindingResult errors, MultiValueMap<String, String> typed) {
        Map<String, String> wrong = new HashMap<>(filter == null ? Map.of() : filter.wrong());
        errors.getFieldErrors()
                .forEach(error -> wrong.put(
                        error.getField(),
                        List.of("from", "to").contains(error.getField()) ? "due.wrong.date" : "due.wrong.value"));
        typed.forEach((name, values) -> {
            if (values.size() > 1) {
                wrong.put(name, "due.wrong.twice");
            }
        });
        return wrong;
    }

    @GetMapping("/due.csv")
    ResponseEntity<StreamingResponseBody> csv(
            @Nullable DueFilter filter, BindingResult errors, @RequestParam MultiValueMap<String, String> typed) {
        if (filter == null || !wrong(filter, errors, typed).isEmpty()) {
            throw new ResponseStatusException(HttpStatus.BAD_REQUEST);
        }
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
