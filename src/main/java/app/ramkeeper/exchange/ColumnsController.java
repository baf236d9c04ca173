package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.Columns;
import app.ramkeeper.exchange.reading.DateOrder;
import app.ramkeeper.exchange.reading.DecimalMark;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.web.Choice;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** Shows how a file was read and asks what its columns say. */
@Controller
@ForSetup
class ColumnsController {

    private static final int PREVIEW = 5;

    private final Imports imports;

    ColumnsController(Imports imports) {
        this.imports = imports;
    }

    @GetMapping("/imports/{id}/columns")
    ModelAndView form(@PathVariable UUID id) {
        Import imported = imports.get(new ImportId(id));
        return page(imported, imports.offered(imported), Map.of(), HttpStatus.OK);
    }

    @PostMapping("/imports/{id}/columns")
    Object choose(@PathVariable UUID id, @RequestParam Map<String, String> posted) {
        Import imported = imports.get(new ImportId(id));
        Map<String, String> problems = new LinkedHashMap<>();
        Mapping chosen = chosen(imported, posted, problems);
        if (!problems.isEmpty()) {
            return page(imported, chosen, problems, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        imports.map(imported.id(), chosen);
        return "redirect:/imports/" + id;
    }

    private Mapping chosen(Import imported, Map<String, String> posted, Map<String, String> problems) {
        Map<String, Integer> columns = new LinkedHashMap<>();
        Set<Integer> taken = new HashSet<>();
        for (Field field : imports.fields(imported.kind())) {
            Integer column = column(
                    posted.get("column:" + field.code()), imported.headings().size());
            if (column != null) {
                columns.put(field.code(), column);
                if (!taken.add(column)) {
                    problems.put(field.code(), "Column " + Columns.letter(column) + " is chosen twice.");
                }
            } else if (field.required()) {
                problems.put(field.code(), "Choose the column that holds this: " + field.label() + ".");
            }
        }
        DateOrder order = one(DateOrder.values(), posted.get("dateOrder"));
        DecimalMark mark = one(DecimalMark.values(), posted.get("decimalMark"));
        if (order == null && imported.openDate() != null) {
            problems.put(
                    "dateOrder", "Say how dates are written: " + imported.openDate() + " can be read in two ways.");
        }
        if (mark == null && imported.openNumber() != null) {
            problems.put(
                    "decimalMark",
                    "Say how numbers are written: " + imported.openNumber() + " can be read in two ways.");
        }
        return new Mapping(columns, order, mark);
    }

    private static @Nullable Integer column(@Nullable String posted, int count) {
        if (posted == null || !posted.matches("\\d{1,4}") || Integer.parseInt(posted) >= count) {
            return null;
        }
        return Integer.valueOf(posted);
    }

    private static <E extends Enum<E>> @Nullable E one(E[] values, @Nullable String name) {
        for (E value : values) {
            if (value.name().equals(name)) {
                return value;
            }
        }
        return null;
    }

    private ModelAndView page(Import imported, Mapping mapping, Map<String, String> problems, HttpStatus status) {
        List<StagedRow> first = imports.firstRows(imported.id(), PREVIEW);
        ModelAndView page = new ModelAndView("exchange/columns");
        page.addObject("imported", imported);
        page.addObject("mapping", mapping);
        page.addObject("order", mapping.order() != null ? mapping.order() : imported.orderSeen());
        page.addObject(
                "mark", mapping.mark() != null || imported.openNumber() != null ? mapping.mark() : imported.mark());
        page.addObject("fields", imports.fields(imported.kind()));
        page.addObject("choices", choices(imported, first));
        page.addObject("rows", first);
        page.addObject("total", imports.counts(imported.id()).total());
        page.addObject("problems", problems);
        page.setStatus(status);
        return page;
    }

    private static List<Choice> choices(Import imported, List<StagedRow> rows) {
        List<Choice> choices = new ArrayList<>();
        for (int i = 0; i < imported.headings().size(); i++) {
            int column = i;
            String sample = rows.stream()
                    .map(row -> row.cell(column))
                    .filter(cell -> !cell.isEmpty())
                    .findFirst()
                    .orElse("");
            String shown = sample.length() > 24 ? sample.substring(0, 24) + "…" : sample;
            choices.add(new Choice(
                    String.valueOf(i),
                    Columns.letter(i) + "  " + imported.headings().get(i)
                            + (shown.isEmpty() ? "" : "  (" + shown + ")")));
        }
        return choices;
    }
}
