package app.ramkeeper.visits.settle;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.AsWritten;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.ReportsToSettle;
import app.ramkeeper.visits.ReportsToSettle.Held;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
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

/** Each report that waits with its full text, and the three things that can become of it. */
@Controller
@ForOffice
@RequestMapping("/to-settle")
class SettlePages {

    private static final String VIEW = "visits/settle";

    private final ReportsToSettle reports;
    private final HeldNames names;
    private final AsWritten written;

    SettlePages(ReportsToSettle reports, HeldNames names, AsWritten written) {
        this.reports = reports;
        this.names = names;
        this.written = written;
    }

    /** Why a report adds nothing. */
    public record DismissForm(
            @NotBlank @Size(max = 2000) @Nullable String note) {}

    @GetMapping
    String list(Model model) {
        List<Held> waiting = reports.open();
        model.addAttribute("waiting", waiting);
        model.addAttribute("names", names.of(waiting.stream().map(Held::report).toList()));
        return "visits/settle-list";
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, Model model) {
        fill(model, reports.get(id));
        return VIEW;
    }

    @PostMapping("/{id}/extra")
    ModelAndView extra(
            @PathVariable UUID id, Model model, RedirectAttributes flash, @AuthenticationPrincipal CurrentUser user) {
        return record(id, model, flash, () -> reports.asExtraVisit(id, new PersonId(user.person())));
    }

    @PostMapping("/{id}/supersede")
    ModelAndView supersede(
            @PathVariable UUID id, Model model, RedirectAttributes flash, @AuthenticationPrincipal CurrentUser user) {
        return record(id, model, flash, () -> reports.asSuperseding(id, new PersonId(user.person())));
    }

    @PostMapping("/{id}/dismiss")
    ModelAndView dismiss(
            @PathVariable UUID id,
            @Valid @ModelAttribute("dismissForm") DismissForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        if (errors.hasErrors()) {
            fill(model, reports.get(id));
            return Saving.again(VIEW, model).addObject("dismissForm", form);
        }
        reports.dismiss(id, Objects.requireNonNull(form.note()), new PersonId(user.person()));
        flash.addFlashAttribute("saved", Saved.of("calls.saved.dismissedItsTextStays"));
        return new ModelAndView("redirect:/to-settle");
    }

    private ModelAndView record(UUID id, Model model, RedirectAttributes flash, Supplier<ReportId> step) {
        try {
            ReportId report = step.get();
            flash.addFlashAttribute("saved", Saved.of("calls.saved.settledTheReportIs"));
            return new ModelAndView("redirect:/visits/reports/" + report);
        } catch (ReportRefused refused) {
            fill(model, reports.get(id));
            model.addAttribute("problems", refused.problems());
            return Saving.again(VIEW, model);
        }
    }

    private void fill(Model model, Held held) {
        model.addAttribute("held", held);
        model.addAttribute("inForce", held.open() ? reports.inForce(held).orElse(null) : null);
        model.addAttribute("kept", held.open() ? reports.kept(held) : null);
        model.addAttribute("names", names.of(List.of(held.report())));
        model.addAttribute("written", written.of(held.report().id()).orElse(null));
        if (!model.containsAttribute("dismissForm")) {
            model.addAttribute("dismissForm", new DismissForm(null));
        }
    }
}
