package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.AgreementDetails;
import app.ramkeeper.fleet.ConsentDetails;
import app.ramkeeper.fleet.ConsentKind;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Papers;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Consents of a site and service agreements of a customer. */
@Controller
@ForOffice
class PaperPages {

    private static final String CONSENT = "fleet/consent-form";
    private static final String AGREEMENT = "fleet/agreement-form";

    /** A consent as its form shows it. */
    record ConsentForm(
            @Nullable UUID id,
            @Nullable Integer version,
            @NotNull @Nullable ConsentKind kind,
            @Size(max = 100) @Nullable String number,
            @Positive @DecimalMax("100000000") @Nullable Double limitLDay,
            @PositiveOrZero @DecimalMax("1000000") @Nullable Double residualLMin,
            @Nullable LocalDate grantedOn,
            @Nullable LocalDate dueOn,
            @Nullable LocalDate expiresOn,
            @Size(max = 4000) @Nullable String notes) {

        static ConsentForm of(ConsentDetails d, int version) {
            return new ConsentForm(
                    null,
                    version,
                    d.kind(),
                    d.number(),
                    d.limitLDay(),
                    d.residualLMin(),
                    d.grantedOn(),
                    d.dueOn(),
                    d.expiresOn(),
                    d.notes());
        }

        ConsentDetails details() {
            return new ConsentDetails(
                    Given.need(kind, "Choose the kind."),
                    number,
                    limitLDay,
                    residualLMin,
                    grantedOn,
                    dueOn,
                    expiresOn,
                    notes);
        }
    }

    /** A service agreement as its form shows it. */
    public record AgreementForm(
            @Nullable UUID id,
            @Nullable Integer version,
            @Size(max = 60) @Nullable String number,
            @NotNull @Nullable LocalDate fromDate,
            @Nullable LocalDate untilDate,
            @NotBlank @Size(max = 2000) @Nullable String covers,

            @PositiveOrZero @DecimalMax("9999999999") @Digits(integer = 10, fraction = 2) @Nullable
            BigDecimal price,

            @Nullable LocalDate renewalOn,
            @Nullable Set<UUID> installs) {

        static AgreementForm of(AgreementDetails d, int version, Set<UUID> installs) {
            return new AgreementForm(
                    null,
                    version,
                    d.number(),
                    d.fromDate(),
                    d.untilDate(),
                    d.covers(),
                    d.price(),
                    d.renewalOn(),
                    installs);
        }

        AgreementDetails details() {
            return new AgreementDetails(
                    number,
                    Given.need(fromDate, "Give the first day."),
                    untilDate,
                    String.valueOf(covers),
                    price,
                    renewalOn);
        }

        /** True if the install is among those chosen. */
        public boolean covered(String install) {
            return installs != null && installs.contains(UUID.fromString(install));
        }

        List<InstallId> covering() {
            return installs == null
                    ? List.of()
                    : installs.stream().map(InstallId::new).toList();
        }
    }

    private final Papers papers;
    private final JdbcClient jdbc;
    private final Words words;
    private final Saving saving;

    PaperPages(Papers papers, JdbcClient jdbc, Words words, Saving saving) {
        this.papers = papers;
        this.jdbc = jdbc;
        this.words = words;
        this.saving = saving;
    }

    @GetMapping("/sites/{site}/consents/new")
    String blankConsent(@PathVariable UUID site, Model model) {
        model.addAttribute("form", new ConsentForm(Uuids.next(), null, null, null, null, null, null, null, null, null));
        return consentPage(site, model);
    }

    private String consentPage(UUID site, Model model) {
        model.addAttribute("site", site);
        model.addAttribute("kinds", words.all(ConsentKind.class));
        return CONSENT;
    }

    @PostMapping("/sites/{site}/consents")
    ModelAndView keepConsent(
            @PathVariable UUID site,
            @Valid @ModelAttribute("form") ConsentForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        UUID id = form.id() == null ? Uuids.next() : form.id();
        if (!saving.did(errors, () -> papers.keepConsent(id, new SiteId(site), form.details()))) {
            return Saving.again(consentPage(site, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.consentKept"));
        return new ModelAndView("redirect:/sites/" + site);
    }

    @GetMapping("/sites/{site}/consents/{id}/edit")
    String editConsent(@PathVariable UUID site, @PathVariable UUID id, Model model) {
        var present = papers.consent(id);
        model.addAttribute("id", id);
        model.addAttribute("form", ConsentForm.of(present.details(), present.version()));
        return consentPage(site, model);
    }

    @PostMapping("/sites/{site}/consents/{id}/edit")
    ModelAndView changeConsent(
            @PathVariable UUID site,
            @PathVariable("id") UUID consent,
            @Valid @ModelAttribute("form") ConsentForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        model.addAttribute("id", consent);
        int version = form.version() == null ? 0 : form.version();
        try {
            if (!saving.did(errors, () -> papers.editConsent(consent, version, form.details()))) {
                return Saving.again(consentPage(site, model), model).addObject("form", form);
            }
        } catch (OptimisticLockingFailureException lost) {
            var present = papers.consent(consent);
            return LostUpdate.between(form, ConsentForm.of(present.details(), present.version()), "fleet.consent.")
                    .page(consentPage(site, model), model, present.version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.consentSaved"));
        return new ModelAndView("redirect:/sites/" + site);
    }

    @GetMapping("/customers/{customer}/agreements/new")
    String blankAgreement(@PathVariable UUID customer, Model model) {
        model.addAttribute("form", new AgreementForm(Uuids.next(), null, null, null, null, null, null, null, Set.of()));
        return agreementPage(customer, model);
    }

    private String agreementPage(UUID customer, Model model) {
        model.addAttribute("customer", customer);
        model.addAttribute(
                "choices",
                jdbc.sql("""
                        select distinct i.id::text, s.name || ': ' || i.name from installs i join sites s on s.id = i.site_id
                          join site_parties p on p.site_id = s.id and p.customer_id = :id and p.until_date is null
                        order by 2""")
                        .param("id", customer)
                        .query((rs, n) -> new Choice(rs.getString(1), rs.getString(2)))
                        .list());
        return AGREEMENT;
    }

    @PostMapping("/customers/{customer}/agreements")
    ModelAndView keepAgreement(
            @PathVariable UUID customer,
            @Valid @ModelAttribute("form") AgreementForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        UUID id = form.id() == null ? Uuids.next() : form.id();
        if (!saving.did(
                errors, () -> papers.keepAgreement(id, new CustomerId(customer), form.details(), form.covering()))) {
            return Saving.again(agreementPage(customer, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.agreementKept"));
        return new ModelAndView("redirect:/customers/" + customer);
    }

    @GetMapping("/customers/{customer}/agreements/{id}/edit")
    String editAgreement(@PathVariable UUID customer, @PathVariable UUID id, Model model) {
        model.addAttribute("id", id);
        model.addAttribute("form", present(id));
        return agreementPage(customer, model);
    }

    private AgreementForm present(UUID id) {
        var present = papers.agreement(id);
        Set<UUID> installs = Set.copyOf(
                jdbc.sql("select install_id from agreement_installs where agreement_id = :id and until_date is null")
                        .param("id", id)
                        .query(UUID.class)
                        .list());
        return AgreementForm.of(present.details(), present.version(), installs);
    }

    @PostMapping("/customers/{customer}/agreements/{id}/edit")
    ModelAndView changeAgreement(
            @PathVariable UUID customer,
            @PathVariable("id") UUID agreement,
            @Valid @ModelAttribute("form") AgreementForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        model.addAttribute("id", agreement);
        int version = form.version() == null ? 0 : form.version();
        try {
            if (!saving.did(errors, () -> papers.editAgreement(agreement, version, form.details(), form.covering()))) {
                return Saving.again(agreementPage(customer, model), model).addObject("form", form);
            }
        } catch (OptimisticLockingFailureException lost) {
            AgreementForm present = present(agreement);
            return LostUpdate.between(form, present, "fleet.agreement.")
                    .page(
                            agreementPage(customer, model),
                            model,
                            papers.agreement(agreement).version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.agreementSaved"));
        return new ModelAndView("redirect:/customers/" + customer);
    }
}
