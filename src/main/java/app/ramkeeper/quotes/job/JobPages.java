package app.ramkeeper.quotes.job;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.People;
import app.ramkeeper.quotes.offer.Answered;
import app.ramkeeper.quotes.offer.Quotes;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.web.Choice;
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
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
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

/** Pages of jobs. */
@Controller
@RequestMapping("/jobs")
@ForOffice
class JobPages {

    private static final String PHASE = "jobs/phase";
    private static final String JOB = "jobs/job";

    private final JobWork jobs;
    private final JobQuery query;
    private final Quotes quotes;
    private final People people;
    private final Saving saving;
    private final Clock clock;

    JobPages(JobWork jobs, JobQuery query, Quotes quotes, People people, Saving saving, Clock clock) {
        this.jobs = jobs;
        this.query = query;
        this.quotes = quotes;
        this.people = people;
        this.saving = saving;
        this.clock = clock;
    }

    @GetMapping
    String list(Model model) {
        model.addAttribute("jobs", query.list());
        return "jobs/list";
    }

    @GetMapping("/{id}")
    String show(@PathVariable UUID id, Model model) {
        fill(id, model);
        return JOB;
    }

    private void fill(UUID id, Model model) {
        model.addAttribute("job", query.job(new JobId(id)));
        model.addAttribute("today", LocalDate.now(clock));
        model.addAttribute("taxes", taxes(quotes.taxes()));
        if (!model.containsAttribute("variation")) {
            model.addAttribute("variation", new VariationForm(null, null, null, null));
        }
        if (!model.containsAttribute("certificate")) {
            model.addAttribute("certificate", new CertificateForm(null, null, null, null));
        }
    }

    static List<Choice> taxes(List<PricedThing> taxes) {
        return taxes.stream()
                .map(tax -> new Choice(
                        tax.id().toString(),
                        tax.name() + " " + tax.price().stripTrailingZeros().toPlainString() + " %"))
                .toList();
    }

    @GetMapping("/{id}/pick-list")
    String pickList(@PathVariable UUID id, Model model) {
        model.addAttribute("job", query.job(new JobId(id)));
        model.addAttribute("picks", query.pickList(new JobId(id)));
        return "jobs/pick-list";
    }

    @GetMapping("/{id}/phases/{phase}")
    String phase(@PathVariable UUID id, @PathVariable UUID phase, Model model) {
        model.addAttribute("form", jobs.phase(new JobId(id), phase));
        return phasePage(id, phase, model);
    }

    private String phasePage(UUID id, UUID phase, Model model) {
        model.addAttribute("id", id);
        model.addAttribute("phase", phase);
        model.addAttribute("people", People.choices(people.fieldPeopleOn(LocalDate.now(clock))));
        return PHASE;
    }

    @PostMapping("/{id}/phases/{phase}")
    Object change(
            @PathVariable UUID id,
            @PathVariable UUID phase,
            @Valid @ModelAttribute("form") PhaseForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        PhaseForm saved = jobs.phase(new JobId(id), phase);
        form.check(result);
        if (!result.hasErrors() && !Objects.equals(saved.version(), form.version())) {
            model.addAttribute("lost", LostUpdate.between(form, saved, "jobs.phase."));
            model.addAttribute("version", saved.version());
            return new ModelAndView(phasePage(id, phase, model), model.asMap(), HttpStatus.CONFLICT);
        }
        if (!saving.did(result, () -> jobs.change(new JobId(id), phase, form))) {
            return Saving.again(phasePage(id, phase, model), model);
        }
        redirect.addFlashAttribute("saved", Saved.of("jobs.saved.saved", form.name()));
        return "redirect:/jobs/" + id;
    }

    @PostMapping("/{id}/certificates")
    Object addCertificate(
            @PathVariable UUID id,
            @Valid @ModelAttribute("certificate") CertificateForm form,
            BindingResult result,
            Model model,
            RedirectAttributes redirect) {
        if (!saving.did(result, () -> jobs.addCertificate(new JobId(id), form))) {
            fill(id, model);
            return Saving.again(JOB, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("jobs.saved.certificateAdded"));
        return "redirect:/jobs/" + id;
    }

    @PostMapping("/{id}/certificates/{certificate}/remove")
    String removeCertificate(@PathVariable UUID id, @PathVariable UUID certificate) {
        jobs.removeCertificate(new JobId(id), certificate);
        return "redirect:/jobs/" + id;
    }

    @PostMapping("/{id}/variations")
    Object addVariation(
            @PathVariable UUID id,
            @Valid @ModelAttribute("variation") VariationForm form,
            BindingResult result,
            Model model,
            @AuthenticationPrincipal CurrentUser user,
            RedirectAttributes redirect) {
        PricedThing tax = quotes.taxes().stream()
                .filter(each -> each.id().equals(form.tax()))
                .findFirst()
                .orElse(null);
        if (tax == null && !result.hasFieldErrors("tax")) {
            result.rejectValue("tax", "jobs.tax.missing");
        }
        if (!saving.did(
                result, () -> jobs.addVariation(new JobId(id), form, Objects.requireNonNull(tax), user.name()))) {
            fill(id, model);
            return Saving.again(JOB, model);
        }
        redirect.addFlashAttribute("saved", Saved.of("jobs.saved.variationAddedItCounts"));
        return "redirect:/jobs/" + id;
    }

    @PostMapping("/{id}/variations/{variation}/answer")
    String decide(
            @PathVariable UUID id,
            @PathVariable UUID variation,
            @RequestParam boolean accepted,
            @RequestParam Answered how,
            @RequestParam(required = false) @Nullable String name,
            RedirectAttributes redirect) {
        String customer = query.job(new JobId(id)).head().customer();
        String by = name == null ? customer : name;
        jobs.decide(new JobId(id), variation, accepted, by.length() <= 160 ? by : by.substring(0, 160), how);
        redirect.addFlashAttribute("saved", Saved.of("jobs.saved.recordedNow"));
        return "redirect:/jobs/" + id;
    }
}
