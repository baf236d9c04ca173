package app.ramkeeper.exchange;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Slice;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The list of imports, and one import from the dry run to its end. */
@Controller
@ForSetup
class ImportController {

    private static final int SHOWN = 50;

    private final Imports imports;

    ImportController(Imports imports) {
        this.imports = imports;
    }

    @GetMapping("/imports")
    String list(@RequestParam(required = false) @Nullable String after, Model model) {
        Slice<Import> shown = imports.list(after);
        model.addAttribute("imports", shown);
        model.addAttribute(
                "withProblems",
                imports.withProblems(shown.rows().stream().map(Import::id).toList()));
        return "exchange/list";
    }

    @GetMapping("/imports/{id}")
    String show(@PathVariable UUID id, Model model) {
        Import imported = imports.get(new ImportId(id));
        if (imported.state() == ImportState.STAGED) {
            return "redirect:/imports/" + id + "/columns";
        }
        Counts counts = imports.counts(imported.id());
        model.addAttribute("imported", imported);
        model.addAttribute("counts", counts);
        model.addAttribute(
                "makes", counts.of("READY") == 0 || imported.state().isWorking() ? null : imports.makes(imported));
        model.addAttribute("done", counts.stepDone(imported.state()));
        model.addAttribute("total", counts.stepTotal(imported.state()));
        return "exchange/show";
    }

    @PostMapping("/imports/{id}/apply")
    String apply(@PathVariable UUID id) {
        imports.apply(new ImportId(id));
        return "redirect:/imports/" + id;
    }

    @PostMapping("/imports/{id}/stop")
    String stop(@PathVariable UUID id, RedirectAttributes attributes) {
        imports.stop(new ImportId(id));
        attributes.addFlashAttribute("saved", Saved.of("exchange.saved.itStopsAfterThe"));
        return "redirect:/imports/" + id;
    }

    @PostMapping("/imports/{id}/undo")
    String undo(@PathVariable UUID id) {
        imports.undo(new ImportId(id));
        return "redirect:/imports/" + id;
    }

    /** The rows of one state; those with problems are the fix list. */
    @GetMapping("/imports/{id}/rows")
    String rows(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "PROBLEM") RowState state,
            @RequestParam(defaultValue = "0") int after,
            Model model) {
        Import imported = imports.get(new ImportId(id));
        List<StagedRow> found = imports.rows(imported.id(), state, after, SHOWN + 1);
        List<StagedRow> shown = found.subList(0, Math.min(SHOWN, found.size()));
        model.addAttribute("imported", imported);
        model.addAttribute("state", state);
        model.addAttribute("count", imports.counts(imported.id()).of(state.name()));
        Mapping mapping = imported.mapping();
        model.addAttribute(
                "rows",
                shown.stream()
                        .map(row -> row.byColumn(mapping == null ? Map.of() : mapping.columns()))
                        .toList());
        model.addAttribute("next", found.size() > SHOWN ? shown.get(SHOWN - 1).line() : null);
        return "exchange/rows";
    }

    @GetMapping("/imports/{id}/rows/{line}")
    String row(@PathVariable UUID id, @PathVariable int line, Model model) {
        Import imported = imports.get(new ImportId(id));
        StagedRow row = imports.row(imported.id(), line);
        if (row.state() != RowState.PROBLEM && row.state() != RowState.READY) {
            throw new Missing("row to mend", line);
        }
        showRow(imported, row, model);
        return "exchange/row";
    }

    /** Takes the mended cells; they are checked at once, and kept whether they are right or not. */
    @PostMapping("/imports/{id}/rows/{line}")
    Object mend(
            @PathVariable UUID id,
            @PathVariable int line,
            @RequestParam(name = "cell", required = false) @Nullable List<String> cells,
            Model model,
            RedirectAttributes attributes) {
        ImportId importId = new ImportId(id);
        Import imported = imports.get(importId);
        List<String> typed = cells == null ? List.of() : cells;
        if (typed.size() != imported.headings().size()) {
            throw new Missing("row to mend", line);
        }
        StagedRow row = imports.mend(importId, line, typed);
        if (row.state() == RowState.PROBLEM) {
            showRow(imported, row, model);
            return app.ramkeeper.web.Saving.again("exchange/row", model);
        }
        attributes.addFlashAttribute("saved", Saved.of("exchange.saved.lineIsReadyNow", line));
        return "redirect:/imports/" + id + "/rows";
    }

    private void showRow(Import imported, StagedRow row, Model model) {
        model.addAttribute("imported", imported);
        model.addAttribute("row", row);
        model.addAttribute("cells", RowForm.of(imported, row, imports.fields(imported.kind())));
        model.addAttribute("general", RowForm.general(imported, row));
    }
}
