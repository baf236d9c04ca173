package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Customers: list, page, form, merging of duplicates. */
@Controller
@ForOffice
@RequestMapping("/customers")
class CustomerPages {

    private static final String FORM = "fleet/customer-form";

    private final CustomerRegister register;
    private final CustomerLists lists;
    private final Saving saving;

    CustomerPages(CustomerRegister register, CustomerLists lists, Saving saving) {
        this.register = register;
        this.lists = lists;
        this.saving = saving;
    }

    @GetMapping
    String list(@RequestParam @Nullable String q, @RequestParam @Nullable String after, Model model) {
        model.addAttribute("q", q);
        if (q == null) {
            model.addAttribute("slice", lists.page(after));
        } else {
            model.addAttribute("found", lists.find(q, 50));
        }
        return "fleet/customers";
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, Model model) {
        var kept = lists.keptFor(id);
        if (kept.isPresent()) {
            return "redirect:/customers/" + kept.get();
        }
        CustomerId customer = new CustomerId(id);
        model.addAttribute("id", id);
        model.addAttribute("customer", register.read(customer).details());
        model.addAttribute("parts", lists.parts(customer));
        model.addAttribute("agreements", lists.agreements(customer));
        return "fleet/customer";
    }

    @GetMapping("/new")
    String blank(Model model) {
        model.addAttribute("form", CustomerForm.blank());
        return FORM;
    }

    @PostMapping
    ModelAndView create(
            @Valid @ModelAttribute("form") CustomerForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        CustomerId id = new CustomerId(form.idOrNew());
        if (!saving.did(errors, () -> register.register(id, form.details()))) {
            return Saving.again(FORM, model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.customerRegistered"));
        return new ModelAndView("redirect:/customers/" + id);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        var present = register.read(new CustomerId(id));
        model.addAttribute("id", id);
        model.addAttribute("form", CustomerForm.of(present.details(), present.version()));
        return FORM;
    }

    @PostMapping("/{id}/edit")
    ModelAndView change(
            @PathVariable("id") UUID customer,
            @Valid @ModelAttribute("form") CustomerForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        CustomerId id = new CustomerId(customer);
        model.addAttribute("id", customer);
        try {
            if (!saving.did(errors, () -> register.edit(id, form.versionOrFirst(), form.details()))) {
                return Saving.again(FORM, model).addObject("form", form);
            }
        } catch (OptimisticLockingFailureException lost) {
            var present = register.read(id);
            return LostUpdate.between(form, CustomerForm.of(present.details(), present.version()), "fleet.customer.")
                    .page(FORM, model, present.version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.customerSaved"));
        return new ModelAndView("redirect:/customers/" + id);
    }

    @GetMapping("/{id}/merge")
    String merge(@PathVariable UUID id, @RequestParam @Nullable String q, Model model) {
        var customer = register.read(new CustomerId(id)).details();
        model.addAttribute("id", id);
        model.addAttribute("customer", customer);
        model.addAttribute("q", q == null ? customer.name() : q);
        model.addAttribute(
                "found",
                lists.find(q == null ? customer.name() : q, 10).stream()
                        .filter(row -> !row.id().equals(id))
                        .toList());
        return "fleet/customer-merge";
    }

    @PostMapping("/{id}/merge")
    String merged(@PathVariable UUID id, @RequestParam UUID kept, RedirectAttributes redirect) {
        register.merge(new CustomerId(id), new CustomerId(kept));
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.mergedTheOldAddress"));
        return "redirect:/customers/" + kept;
    }
}
