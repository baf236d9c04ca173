package app.ramkeeper.catalogue;

import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
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

/** Pages of the parts. */
@Controller
@RequestMapping("/parts")
@ForSetup
class PartController {

    private final Parts parts;
    private final CatalogueChoices choices;

    PartController(Parts parts, CatalogueChoices choices) {
        this.parts = parts;
        this.choices = choices;
    }

    @ModelAttribute("kinds")
    List<Choice> kinds() {
        return choices.partKinds();
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("parts", parts.list());
        return "catalogue/parts";
    }

    @GetMapping("/new")
    String blank(Model model) {
        return page(model, null, PartForm.blank());
    }

    @GetMapping("/{id}")
    String edit(@PathVariable UUID id, Model model) {
        return page(model, id, parts.form(new PartId(id)));
    }

    @PostMapping("/new")
    String add(
            @Valid @ModelAttribute("form") PartForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        check(new UUID(0, 0), form, result);
        if (result.hasErrors()) {
            return again(model, null, response);
        }
        parts.add(form);
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.added", form.number(), form.name()));
        return "redirect:/parts";
    }

    @PostMapping("/{id}")
    String save(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") PartForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        PartForm saved = parts.form(new PartId(id));
        check(id, form, result);
        if (result.hasErrors()) {
            return again(model, id, response);
        }
        if (!Objects.equals(saved.version(), form.version())) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("lost", LostUpdate.between(form, saved, "part."));
            return page(model, id, form.withVersion(saved.version()));
        }
        parts.change(new PartId(id), form);
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.saved", form.number(), form.name()));
        return "redirect:/parts";
    }

    @PostMapping("/{id}/withdraw")
    String withdraw(@PathVariable UUID id, RedirectAttributes redirect) {
        parts.withdraw(new PartId(id));
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.takenOutOfUse"));
        return "redirect:/parts";
    }

    @PostMapping("/{id}/bring-back")
    String bringBack(@PathVariable UUID id, RedirectAttributes redirect) {
        parts.bringBack(new PartId(id));
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.inUseAgain"));
        return "redirect:/parts";
    }

    private void check(UUID id, PartForm form, BindingResult result) {
        if (form.number() != null && parts.numberTaken(form.number(), id)) {
            result.rejectValue("number", "part.number.taken", "Another part has this number.");
        }
    }

    private static String again(Model model, @Nullable UUID id, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
        model.addAttribute("id", id);
        return "catalogue/part";
    }

    private static String page(Model model, @Nullable UUID id, PartForm form) {
        model.asMap().remove(BindingResult.MODEL_KEY_PREFIX + "form");
        model.addAttribute("form", form);
        model.addAttribute("id", id);
        return "catalogue/part";
    }
}
