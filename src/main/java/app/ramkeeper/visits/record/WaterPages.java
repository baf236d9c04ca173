package app.ramkeeper.visits.record;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.WaterCare;
import app.ramkeeper.visits.WaterRecords;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
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

/** Water samples and hygiene of a recorded visit: added at the desk, and completed when the laboratory has written. */
@Controller
@ForField
class WaterPages {

    private static final String VIEW = "visits/water";

    private final WaterRecords water;
    private final VisitHistory history;

    WaterPages(WaterRecords water, VisitHistory history) {
        this.water = water;
        this.history = history;
    }

    @GetMapping("/visits/reports/{id}/water")
    String add(@PathVariable UUID id, Model model) {
        ReportView report = report(new ReportId(id));
        show(model, report, new TypedForm().set("takenOn", report.on()), null);
        return VIEW;
    }

    @PostMapping("/visits/reports/{id}/water")
    ModelAndView add(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        ReportView report = report(new ReportId(id));
        TypedForm form = new TypedForm(posted);
        WaterCare.Sample sample = WaterForm.sample(form, report.on(), false);
        WaterCare.Hygiene hygiene = WaterForm.hygiene(form);
        if (sample == null && hygiene == null) {
            form.problem("reference", "Say what was sampled, disinfected or cleaned.");
        }
        if (!form.hasProblems()) {
            try {
                water.add(report.id(), new WaterCare(sample == null ? List.of() : List.of(sample), hygiene));
                return done(report.id(), flash);
            } catch (Conflict conflict) {
                form.problem("reference", String.valueOf(conflict.getMessage()));
            }
        }
        show(model, report, form, null);
        return Saving.again(VIEW, model);
    }

    @GetMapping("/water-samples/{id}")
    String edit(@PathVariable UUID id, Model model) {
        WaterRecords.Care care = water.with(id);
        show(model, report(care.report()), WaterForm.of(kept(care, id).sample()), kept(care, id));
        return VIEW;
    }

    @PostMapping("/water-samples/{id}")
    ModelAndView edit(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        WaterRecords.Care care = water.with(id);
        TypedForm form = new TypedForm(posted);
        WaterCare.Sample sample = WaterForm.sample(form, care.on(), true);
        if (form.hasProblems() || sample == null) {
            show(model, report(care.report()), form, kept(care, id));
            model.addAttribute("version", form.value("version"));
            return Saving.again(VIEW, model);
        }
        String version = form.value("version");
        if (water.change(id, version.matches("\\d{1,9}") ? Integer.parseInt(version) : -1, sample)) {
            return done(care.report(), flash);
        }
        WaterRecords.Kept present = kept(water.with(id), id);
        show(model, report(care.report()), form, present);
        TypedForm theirs = WaterForm.of(present.sample());
        return new LostUpdate(WaterForm.FIELDS.stream()
                        .filter(field -> !theirs.value(field).equals(form.value(field)))
                        .map(field -> new LostUpdate.Difference(
                                form.id(field), "water." + field, form.value(field), theirs.value(field)))
                        .toList())
                .page(VIEW, model, present.version());
    }

    private static WaterRecords.Kept kept(WaterRecords.Care care, UUID id) {
        return care.samples().stream()
                .filter(kept -> kept.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new Missing("water sample", id));
    }

    private static ModelAndView done(ReportId report, RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.of("visits.saved.keptWithTheVisit"));
        return new ModelAndView("redirect:/visits/reports/" + report);
    }

    private void show(Model model, ReportView report, TypedForm form, WaterRecords.@Nullable Kept edited) {
        model.addAttribute("report", report);
        model.addAttribute("form", form);
        model.addAttribute("edited", edited);
        model.addAttribute("version", edited == null ? 0 : edited.version());
        model.addAttribute(
                "hygieneOpen",
                edited == null
                        && water.of(report.id())
                                .map(care -> care.hygiene() == null)
                                .orElse(true));
    }

    private ReportView report(ReportId id) {
        return history.report(id).orElseThrow(() -> new Missing("report", id));
    }
}
