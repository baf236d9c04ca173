package app.ramkeeper.field;

import app.ramkeeper.field.Causes.Cause;
import app.ramkeeper.field.Checklists.Edition;
import app.ramkeeper.field.Checklists.Item;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The lists that phones take along, as text to edit: likely causes by symptom, commissioning steps by pump model. */
@Controller
@ForSetup
class FieldLists {

    private static final String VIEW = "field/lists";

    private final Causes causes;
    private final Checklists checklists;
    private final VisitChoices choices;
    private final JdbcClient jdbc;

    FieldLists(Causes causes, Checklists checklists, VisitChoices choices, JdbcClient jdbc) {
        this.causes = causes;
        this.checklists = checklists;
        this.choices = choices;
        this.jdbc = jdbc;
    }

    @GetMapping("/field-lists")
    String lists(Model model) {
        fill(model);
        return VIEW;
    }

    private void fill(Model model) {
        Map<String, List<Cause>> bySymptom = causes.all().stream().collect(Collectors.groupingBy(Cause::symptom));
        Map<String, String> texts = new LinkedHashMap<>();
        Arrays.stream(Symptom.values())
                .forEach(s -> texts.put(s.name(), ListLines.of(bySymptom.getOrDefault(s.name(), List.of()))));
        model.addAttribute("symptoms", choices.symptoms());
        model.addAttribute("causes", texts);
        model.addAttribute(
                "bases",
                texts.entrySet().stream()
                        .collect(Collectors.toMap(Map.Entry::getKey, e -> Intake.sha256(e.getValue()))));
        List<Edition> editions = checklists.inForce();
        model.addAttribute("editions", editions);
        model.addAttribute(
                "steps", editions.stream().collect(Collectors.toMap(Edition::id, e -> ListLines.ofItems(e.items()))));
        model.addAttribute(
                "models",
                jdbc.sql("""
                        select m.id::text, m.name from pump_models m where m.withdrawn_on is null
                          and not exists (select 1 from field_checklists c where c.model_id = m.id) order by m.name""")
                        .query((row, n) -> new Choice(row.getString(1), row.getString(2)))
                        .list());
    }

    @PostMapping("/field-lists/causes")
    ModelAndView causes(
            @RequestParam Symptom symptom,
            @RequestParam String base,
            @RequestParam(defaultValue = "") String lines,
            Model model,
            RedirectAttributes flash) {
        String now = ListLines.of(causes.of(symptom));
        if (!base.equals(Intake.sha256(now))) {
            return overtaken(model, symptom.name(), lines, now);
        }
        try {
            causes.write(symptom, ListLines.causes(symptom.name(), lines));
        } catch (ListLines.Wrong wrong) {
            return again(model, symptom.name(), lines, wrong.getMessage());
        }
        flash.addFlashAttribute("saved", Saved.of("field.saved.savedPhonesTakeIt"));
        return new ModelAndView("redirect:/field-lists");
    }

    @PostMapping("/field-lists/commissioning")
    ModelAndView commissioning(
            @RequestParam(required = false) @Nullable UUID model,
            @RequestParam int base,
            @RequestParam(defaultValue = "") String lines,
            Model page,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        String where = "steps-" + (model == null ? "all" : model);
        Optional<Edition> now = checklists.inForce().stream()
                .filter(e -> Objects.equals(e.model(), model))
                .findFirst();
        List<Item> before = now.map(Edition::items).orElse(List.of());
        if (now.map(Edition::number).orElse(0) != base) {
            return overtaken(page, where, lines, ListLines.ofItems(before));
        }
        try {
            checklists.write(model, ListLines.items(lines, before), new PersonId(user.person()));
        } catch (ListLines.Wrong wrong) {
            return again(page, base == 0 ? "own" : where, lines, wrong.getMessage());
        }
        flash.addFlashAttribute("saved", Saved.of("field.saved.savedAsTheNext"));
        return new ModelAndView("redirect:/field-lists");
    }

    /** Somebody else was quicker: both texts are shown, and the next save is on top of theirs. */
    private ModelAndView overtaken(Model model, String where, String typed, String theirs) {
        model.addAttribute("theirs", theirs);
        ModelAndView page = again(
                model,
                where,
                typed,
                "Somebody else saved this list meanwhile. Below is theirs; yours is still in the field.");
        page.setStatus(HttpStatus.CONFLICT);
        return page;
    }

    private ModelAndView again(Model model, String where, String typed, @Nullable String wrong) {
        fill(model);
        model.addAttribute("where", where);
        model.addAttribute("typed", typed);
        model.addAttribute("wrong", wrong);
        return Saving.again(VIEW, model);
    }
}
