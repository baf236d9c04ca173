package app.ramkeeper.catalogue;

import app.ramkeeper.identity.People;
import app.ramkeeper.web.Choice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;

/** Fills the page of one kind of task. */
@Component
class TaskKindPage {

    private final Catalogue catalogue;
    private final JdbcClient jdbc;
    private final CatalogueChoices choices;
    private final People people;

    TaskKindPage(Catalogue catalogue, JdbcClient jdbc, CatalogueChoices choices, People people) {
        this.catalogue = catalogue;
        this.jdbc = jdbc;
        this.choices = choices;
        this.people = people;
    }

    /** The page with a form that has rows to spare. */
    String form(Model model, @Nullable UUID id, TaskKindForm form) {
        model.asMap().remove(BindingResult.MODEL_KEY_PREFIX + "form");
        model.addAttribute("form", roomy(form));
        return again(model, id, form);
    }

    /** The page with the form as it was posted, errors and all. */
    String again(Model model, @Nullable UUID id, TaskKindForm form) {
        List<PumpModelCard> models = catalogue.pumpModels();
        TaskTerms stored = id == null ? null : catalogue.terms().get(id);
        model.addAttribute("id", id);
        model.addAttribute("stored", stored);
        model.addAttribute("schedules", choices.schedules());
        model.addAttribute("scopes", choices.scopes());
        model.addAttribute("lives", choices.lives());
        model.addAttribute("partKinds", choices.partKinds());
        model.addAttribute(
                "modelNames", models.stream().collect(Collectors.toMap(m -> m.id().value(), PumpModelCard::name)));
        model.addAttribute("waterNames", waters());
        model.addAttribute(
                "kinds",
                catalogue.taskKinds().stream()
                        .filter(kind -> !kind.id().value().equals(id))
                        .toList());
        model.addAttribute("chosen", Set.copyOf(form.includeList()));
        return "catalogue/task-kind";
    }

    TaskKindForm roomy(TaskKindForm form) {
        return TaskKindForms.roomy(form, catalogue.pumpModels(), List.copyOf(waters().keySet()));
    }

    /** Models and waters come from the page's own rows; whatever else was posted is refused by its row. */
    void check(TaskKindForm form, BindingResult result) {
        checkSkills(form, result);
        Set<UUID> models =
                catalogue.pumpModels().stream().map(m -> m.id().value()).collect(Collectors.toSet());
        List<TaskKindForm.ModelInterval> own = TaskKindForms.orEmpty(form.models());
        for (int i = 0; i < own.size(); i++) {
            if (own.get(i).isSet() && !models.contains(own.get(i).model())) {
                result.rejectValue(
                        "models[" + i + "].months", "taskKind.model.unknown", "This pump model is not there any more.");
            }
        }
        Set<String> waters = waters().keySet();
        List<TaskKindForm.WaterFactor> factors = TaskKindForms.orEmpty(form.waters());
        for (int i = 0; i < factors.size(); i++) {
            String water = factors.get(i).water();
            if (water != null && !waters.contains(water)) {
                result.rejectValue(
                        "waters[" + i + "].factor", "taskKind.water.unknown", "This class of water is not known.");
            }
        }
    }

    /** A skill that nobody can have would keep the task out of every week. */
    private void checkSkills(TaskKindForm form, BindingResult result) {
        List<String> unknown = new ArrayList<>(form.skillList());
        if (unknown.isEmpty()) {
            return;
        }
        List<String> known =
                people.skills().stream().map(Choice::value).sorted().toList();
        unknown.removeAll(known);
        if (!unknown.isEmpty()) {
            Object[] words = {String.join(", ", unknown), String.join(", ", known)};
            result.rejectValue("skills", "taskKind.skills.unknown", words, "This skill is not known.");
        }
    }

    private Map<String, String> waters() {
        Map<String, String> names = new java.util.LinkedHashMap<>();
        jdbc.sql("select code, name from water_classes order by code").query(row -> {
            names.put(row.getString(1), row.getString(2));
        });
        return names;
    }
}
