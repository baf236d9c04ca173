package app.ramkeeper.catalogue;

import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.util.Objects;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Pages of the kinds of task. A change can be looked at, with the number of due dates it moves, before it is saved. */
@Controller
@RequestMapping("/task-kinds")
@ForAdministrator
class TaskKindController {

    private final TaskKinds kinds;
    private final TaskKindPage page;

    TaskKindController(TaskKinds kinds, TaskKindPage page) {
        this.kinds = kinds;
        this.page = page;
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("kinds", kinds.list());
        return "catalogue/task-kinds";
    }

    @GetMapping("/new")
    String blank(Model model) {
        return page.form(model, null, TaskKindForm.blank());
    }

    @PostMapping("/new")
    String add(
            @Valid @ModelAttribute("form") TaskKindForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        check(new UUID(0, 0), form, result);
        if (result.hasErrors()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page.again(model, null, form);
        }
        kinds.add(form);
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.addedOf", form.name()));
        return "redirect:/task-kinds";
    }

    @GetMapping("/{id}")
    String edit(@PathVariable UUID id, Model model) {
        return page.form(model, id, kinds.form(new TaskKindId(id)));
    }

    @PostMapping("/{id}")
    String save(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") TaskKindForm form,
            BindingResult result,
            @RequestParam(defaultValue = "save") String step,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        TaskKindForm saved = kinds.form(new TaskKindId(id));
        check(id, form, result);
        if (result.hasErrors()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_ENTITY.value());
            return page.again(model, id, form);
        }
        if (!Objects.equals(saved.version(), form.version())) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("lost", LostUpdate.between(page.roomy(form), page.roomy(saved), "taskKind."));
            return page.form(model, id, form.withVersion(saved.version()));
        }
        if (step.equals("preview")) {
            model.addAttribute("moves", kinds.preview(new TaskKindId(id), form));
            return page.form(model, id, form);
        }
        kinds.change(new TaskKindId(id), form);
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.savedOf", form.name()));
        return "redirect:/task-kinds";
    }

    @PostMapping("/{id}/withdraw")
    String withdraw(@PathVariable UUID id, RedirectAttributes redirect) {
        kinds.withdraw(new TaskKindId(id));
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.takenOutOfUseIts"));
        return "redirect:/task-kinds";
    }

    @PostMapping("/{id}/bring-back")
    String bringBack(@PathVariable UUID id, RedirectAttributes redirect) {
        kinds.bringBack(new TaskKindId(id));
        redirect.addFlashAttribute("saved", Saved.of("catalogue.saved.inUseAgain"));
        return "redirect:/task-kinds";
    }

    private void check(UUID id, TaskKindForm form, BindingResult result) {
        if (form.name() != null && kinds.nameTaken(form.name(), id)) {
            result.rejectValue("name", "taskKind.name.taken", "Another kind has this name.");
        }
        if (kinds.goesRound(id, form.includeList())) {
            result.rejectValue(
                    "includes", "taskKind.includes.round", "A kind cannot include itself, over others either.");
        } else if (!kinds.exist(form.includeList())) {
            result.rejectValue("includes", "taskKind.includes.unknown", "One of these kinds is not there any more.");
        }
        page.check(form, result);
    }
}
