package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.ContactDetails;
import app.ramkeeper.fleet.ContactId;
import app.ramkeeper.fleet.CustomerRegister;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
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
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Mends what is known about a person at a site: a new number, a name misheard. */
@Controller
@ForOffice
@RequestMapping("/sites/{site}/contacts/{contact}/edit")
class ContactPages {

    private static final String FORM = "fleet/contact-form";

    /** A person as the form shows them. */
    record ContactForm(
            @Nullable Integer version,
            @NotBlank @Size(max = 200) @Nullable String name,
            @Size(max = 60) @Nullable String phone,
            @Size(max = 254) @Email @Nullable String email,
            @Size(max = 10000) @Nullable String notes) {

        static ContactForm of(ContactDetails details, int version) {
            return new ContactForm(version, details.name(), details.phone(), details.email(), details.notes());
        }
    }

    private final CustomerRegister register;
    private final Saving saving;

    ContactPages(CustomerRegister register, Saving saving) {
        this.register = register;
        this.saving = saving;
    }

    @GetMapping
    String edit(@PathVariable UUID site, @PathVariable UUID contact, Model model) {
        var present = register.read(new ContactId(contact));
        model.addAttribute("form", ContactForm.of(present.details(), present.version()));
        return FORM;
    }

    @PostMapping
    ModelAndView change(
            @PathVariable UUID site,
            @PathVariable UUID contact,
            @Valid @ModelAttribute("form") ContactForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        ContactId id = new ContactId(contact);
        int version = form.version() == null ? 0 : form.version();
        try {
            boolean done = saving.did(
                    errors,
                    () -> register.edit(
                            id,
                            version,
                            new ContactDetails(
                                    Given.need(form.name(), "Give the name."),
                                    form.phone(),
                                    form.email(),
                                    form.notes())));
            if (!done) {
                return Saving.again(FORM, model).addObject("form", form);
            }
        } catch (OptimisticLockingFailureException lost) {
            var present = register.read(id);
            return LostUpdate.between(form, ContactForm.of(present.details(), present.version()), "fleet.contact.")
                    .page(FORM, model, present.version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.personSaved"));
        return new ModelAndView("redirect:/sites/" + site + "/parties");
    }
}
