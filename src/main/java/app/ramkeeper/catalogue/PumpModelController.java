package app.ramkeeper.catalogue;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Pages of the pump models. */
@Controller
@RequestMapping("/pump-models")
@ForSetup
class PumpModelController {

    private static final int SPARE_ROWS = 3;
    /** As many as the binder reads of a list. */
    private static final int MOST_ROWS = 256;

    private final PumpModels models;
    private final Catalogue catalogue;
    private final CatalogueChoices choices;

    PumpModelController(PumpModels models, Catalogue catalogue, CatalogueChoices choices) {
        this.models = models;
        this.catalogue = catalogue;
        this.choices = choices;
    }

    @ModelAttribute("vessels")
    List<Choice> vessels() {
        return choices.vessels();
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("models", models.list());
        return "catalogue/pump-models";
    }

    @GetMapping("/new")
    String blank(Model model) {
        return page(model, null, PumpModelForm.blank().roomy(SPARE_ROWS));
    }

    @GetMapping("/{id}")
    String edit(@PathVariable UUID id, Model model) {
        return page(model, id, models.form(new PumpModelId(id)).roomy(SPARE_ROWS));
    }

    @PostMapping("/new")
    String add(
            @Valid @ModelAttribute("form") PumpModelForm form,
            BindingResult result,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        check(new UUID(0, 0), form, result);
        if (result.hasErrors()) {
            return again(model, null, request, response);
        }
        models.add(form);
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.addedOf", form.name()));
        return "redirect:/pump-models";
    }

    @PostMapping("/{id}")
    String save(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") PumpModelForm form,
            BindingResult result,
            Model model,
            HttpServletRequest request,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        PumpModelForm saved = models.form(new PumpModelId(id));
        check(id, form, result);
        if (result.hasErrors()) {
            return again(model, id, request, response);
        }
        if (!Objects.equals(saved.version(), form.version())) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("lost", LostUpdate.between(form.roomy(0), saved.roomy(0), "pumpModel."));
            return page(model, id, form.roomy(SPARE_ROWS).withVersion(saved.version()));
        }
        models.change(new PumpModelId(id), form);
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.savedOf", form.name()));
        return "redirect:/pump-models";
    }

    @PostMapping("/{id}/withdraw")
    String withdraw(@PathVariable UUID id, RedirectAttributes redirect) {
        models.withdraw(new PumpModelId(id));
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.takenOutOfUseFor"));
        return "redirect:/pump-models";
    }

    @PostMapping("/{id}/bring-back")
    String bringBack(@PathVariable UUID id, RedirectAttributes redirect) {
        models.bringBack(new PumpModelId(id));
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.inUseAgain"));
        return "redirect:/pump-models";
    }

    private void check(UUID id, PumpModelForm form, BindingResult result) {
        if (form.name() != null && models.nameTaken(form.name(), id)) {
            result.rejectValue("name", "pumpModel.name.taken", "Another model has this name.");
        }
        Set<UUID> known =
                catalogue.parts().stream().map(part -> part.id().value()).collect(Collectors.toSet());
        List<PumpModelForm.PartFit> fits = TaskKindForms.orEmpty(form.parts());
        for (int i = 0; i < fits.size(); i++) {
            UUID part = fits.get(i).part();
            if (part != null && !known.contains(part)) {
                result.rejectValue(
                        "parts[" + i + "].part",
                        "pumpModel.part.unknown",
                        "This part is not in the catalogue any more.");
            }
        }
        long distinct = fits.stream()
                .filter(fit -> fit.part() != null)
                .map(fit -> fit.part() + "@" + fit.position())
                .distinct()
                .count();
        if (distinct < fits.stream().filter(fit -> fit.part() != null).count()) {
            result.rejectValue("parts", "pumpModel.part.twice", "The same part stands twice at one position.");
        }
        List<PumpModelForm.Performance> points = TaskKindForms.orEmpty(form.performance()).stream()
                .filter(p -> !p.isBlank() && p.isWhole())
                .toList();
        if (points.stream().map(PumpModelController::key).distinct().count() < points.size()) {
            result.rejectValue(
                    "performance", "pumpModel.performance.twice", "The same fall, lift and drive flow stand twice.");
        }
    }

    private static String key(PumpModelForm.Performance point) {
        return Objects.requireNonNull(point.fallM()).stripTrailingZeros() + " "
                + Objects.requireNonNull(point.liftM()).stripTrailingZeros() + " "
                + Objects.requireNonNull(point.driveFlowLMin()).stripTrailingZeros();
    }

    /** Shows every row that was typed, also when one cannot be read and so no form was made of them. */
    private String again(Model model, @Nullable UUID id, HttpServletRequest request, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        model.addAttribute("performanceRows", rows(request, "performance"));
        model.addAttribute("partRows", rows(request, "parts"));
        return fill(model, id);
    }

    private static int rows(HttpServletRequest request, String list) {
        Pattern row = Pattern.compile(list + "\\[(\\d{1,3})\\].*");
        return request.getParameterMap().keySet().stream()
                .map(row::matcher)
                .filter(Matcher::matches)
                .mapToInt(found -> Integer.parseInt(found.group(1)) + 1)
                .filter(rows -> rows <= MOST_ROWS)
                .max()
                .orElse(0);
    }

    private String page(Model model, @Nullable UUID id, PumpModelForm form) {
        model.asMap().remove(BindingResult.MODEL_KEY_PREFIX + "form");
        model.addAttribute("form", form);
        model.addAttribute(
                "performanceRows", TaskKindForms.orEmpty(form.performance()).size());
        model.addAttribute("partRows", TaskKindForms.orEmpty(form.parts()).size());
        return fill(model, id);
    }

    private String fill(Model model, @Nullable UUID id) {
        model.addAttribute("id", id);
        model.addAttribute(
                "partChoices",
                catalogue.parts().stream()
                        .map(part -> new Choice(part.id().toString(), part.number() + " " + part.name()))
                        .toList());
        return "catalogue/pump-model";
    }
}
