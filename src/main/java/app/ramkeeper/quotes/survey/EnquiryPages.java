package app.ramkeeper.quotes.survey;

import app.ramkeeper.fleet.CustomerMatch;
import app.ramkeeper.fleet.CustomerSearch;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
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

/** Taking down an enquiry, and what has come of it. */
@Controller
@ForOffice
@RequestMapping("/enquiries")
class EnquiryPages {

    private static final String FORM = "enquiries/form";
    private static final String PAGE = "enquiries/page";
    private static final int FOUND = 8;

    private final Enquiries enquiries;
    private final EnquiryScreen screen;
    private final Fleet fleet;
    private final CustomerSearch customers;
    private final Saving saving;
    private final Clock clock;

    EnquiryPages(
            Enquiries enquiries,
            EnquiryScreen screen,
            Fleet fleet,
            CustomerSearch customers,
            Saving saving,
            Clock clock) {
        this.enquiries = enquiries;
        this.screen = screen;
        this.fleet = fleet;
        this.customers = customers;
        this.saving = saving;
        this.clock = clock;
    }

    @GetMapping
    @ForField
    String list(
            @RequestParam(required = false) @Nullable EnquiryState state,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        model.addAttribute("state", state);
        model.addAttribute("states", EnquiryState.values());
        model.addAttribute("slice", enquiries.list(state, after));
        return "enquiries/list";
    }

    @GetMapping("/new")
    String fresh(@RequestParam(required = false) @Nullable UUID site, Model model) {
        EnquiryForm form = EnquiryForm.blank(LocalDate.now(clock), site);
        fill(model, form, null);
        model.addAttribute("form", form);
        return FORM;
    }

    @PostMapping("/new")
    ModelAndView add(
            @Valid @ModelAttribute("form") EnquiryForm form,
            BindingResult errors,
            @RequestParam(required = false) @Nullable String find,
            Model model,
            RedirectAttributes flash) {
        if (find != null) {
            return found(form, errors, model, null);
        }
        EnquiryId[] id = new EnquiryId[1];
        check(form, errors);
        if (!saving.did(errors, () -> id[0] = enquiries.add(form))) {
            fill(model, form, null);
            return Saving.again(FORM, model).addObject("form", form);
        }
        flash.addFlashAttribute("saved", Saved.of("surveys.saved.putDownNowThe"));
        return new ModelAndView("redirect:/enquiries/" + id[0]);
    }

    @GetMapping("/{id}")
    @ForField
    String show(@PathVariable UUID id, Model model) {
        screen.show(model, enquiries.view(id));
        return PAGE;
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        EnquiryForm form = enquiries.form(id);
        fill(model, form, id);
        model.addAttribute("form", form);
        return FORM;
    }

    @PostMapping("/{id}/edit")
    ModelAndView save(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") EnquiryForm form,
            BindingResult errors,
            @RequestParam(required = false) @Nullable String find,
            Model model,
            RedirectAttributes flash) {
        EnquiryForm present = enquiries.form(id);
        if (find != null) {
            return found(form, errors, model, id);
        }
        boolean[] mine = {true};
        check(form, errors);
        if (!saving.did(errors, () -> mine[0] = enquiries.change(id, form))) {
            fill(model, form, id);
            return Saving.again(FORM, model).addObject("form", form);
        }
        if (!mine[0]) {
            fill(model, form, id);
            return LostUpdate.between(form.bare(), present.bare(), "enquiries.")
                    .page(FORM, model, Objects.requireNonNull(present.version()));
        }
        flash.addFlashAttribute("saved", Saved.of("surveys.saved.saved"));
        return new ModelAndView("redirect:/enquiries/" + id);
    }

    /** Lost or closed with a reason, or open again. */
    @PostMapping("/{id}/state")
    ModelAndView mark(
            @PathVariable UUID id,
            @RequestParam EnquiryState state,
            @RequestParam(required = false) @Nullable String reason,
            Model model,
            RedirectAttributes flash) {
        EnquiryView enquiry = enquiries.view(id);
        String words = reason == null || reason.isBlank() ? null : reason.strip();
        try {
            if (words != null && words.length() > 1_000) {
                throw new Conflict("This is too long: at most 1,000 characters.");
            }
            enquiries.mark(new EnquiryId(id), state, words);
        } catch (Conflict conflict) {
            screen.show(model, enquiry);
            model.addAttribute("stateProblem", conflict.getMessage());
            model.addAttribute("typedState", state);
            model.addAttribute("typedReason", reason);
            return Saving.again(PAGE, model);
        }
        flash.addFlashAttribute("saved", Saved.of("surveys.saved.saved"));
        return new ModelAndView("redirect:/enquiries/" + id);
    }

    /** Known customers by what is typed of the name so far. */
    @GetMapping("/customers")
    String customers(@RequestParam(required = false) @Nullable String customerName, Model model) {
        model.addAttribute("known", known(customerName));
        return "enquiries/customer-pick :: options";
    }

    private List<CustomerMatch> known(@Nullable String name) {
        return name == null || name.isBlank() ? List.of() : customers.find(name.strip(), FOUND);
    }

    private ModelAndView found(EnquiryForm form, BindingResult errors, Model model, @Nullable UUID id) {
        fill(model, form, id);
        String q = form.q();
        model.addAttribute("found", q == null ? List.of() : fleet.search(q, FOUND));
        return Saving.asItStands(FORM, model, form, errors);
    }

    private void check(EnquiryForm form, BindingResult errors) {
        if (form.site() == null && form.place() == null) {
            errors.rejectValue("place", "enquiries.place.missing");
        }
        if (form.customer() != null && !enquiries.knows(form.customer())) {
            errors.rejectValue("customerName", "enquiries.customer.gone");
        }
        if (form.site() != null && chosen(form.site()) == null) {
            errors.rejectValue("q", "enquiries.site.gone");
        }
    }

    private void fill(Model model, EnquiryForm form, @Nullable UUID id) {
        model.addAttribute("id", id);
        model.addAttribute("known", known(form.customerName()));
        model.addAttribute("chosenCustomer", form.customer());
        model.addAttribute("q", form.q());
        model.addAttribute("found", List.of());
        model.addAttribute("chosen", form.site() == null ? null : chosen(form.site()));
    }

    private @Nullable Object chosen(UUID site) {
        try {
            return fleet.site(new SiteId(site));
        } catch (Missing gone) {
            return null;
        }
    }
}
