package app.ramkeeper.fleet.web;

import app.ramkeeper.catalogue.PumpModelId;
import app.ramkeeper.fleet.FitPump;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Ownership;
import app.ramkeeper.fleet.PumpDetails;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.PumpPlace;
import app.ramkeeper.fleet.PumpRegister;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Pumps with their history; a swap at an install, a loan, a stay in the workshop. */
@Controller
@ForOffice
class PumpPages {

    private static final String FORM = "fleet/pump-form";

    /** A pump as its form shows it. */
    record PumpForm(
            @Nullable UUID id,
            @Nullable Integer version,
            @Size(max = 60) @Nullable String serial,
            @Nullable UUID model,
            @PastOrPresent @Nullable LocalDate madeOn,
            @NotNull @Nullable Ownership ownership,
            @Nullable LocalDate warrantyUntil,
            @Size(max = 4000) @Nullable String notes) {

        static PumpForm of(PumpDetails d, int version) {
            PumpModelId model = d.model();
            return new PumpForm(
                    null,
                    version,
                    d.serial(),
                    model == null ? null : model.value(),
                    d.madeOn(),
                    d.ownership(),
                    d.warrantyUntil(),
                    d.notes());
        }

        PumpDetails details() {
            return new PumpDetails(
                    serial,
                    model == null ? null : new PumpModelId(model),
                    madeOn,
                    ownership == null ? Ownership.CUSTOMER : ownership,
                    warrantyUntil,
                    notes);
        }
    }

    /** Which pump comes in, from which day on, and where the old one goes. */
    record SwapForm(
            @NotNull @Nullable UUID pump,
            @NotNull @Min(1) @Max(99) @Nullable Integer placeNo,
            @NotNull @PastOrPresent @Nullable LocalDate on,
            @Nullable Boolean loan,
            @NotNull @Nullable PumpPlace oldGoesTo,
            @Nullable Boolean takeAway,
            @Size(max = 1000) @Nullable String reason) {}

    /** Where a pump goes that is not fitted. */
    record MoveForm(
            @NotNull @Nullable PumpPlace place,
            @NotNull @PastOrPresent @Nullable LocalDate on,
            @Size(max = 1000) @Nullable String reason) {}

    private final Fleet fleet;
    private final PumpRegister register;
    private final InstallLists lists;
    private final Words words;
    private final Saving saving;

    PumpPages(Fleet fleet, PumpRegister register, InstallLists lists, Words words, Saving saving) {
        this.fleet = fleet;
        this.register = register;
        this.lists = lists;
        this.words = words;
        this.saving = saving;
    }

    @GetMapping("/pumps")
    String list(@RequestParam @Nullable String q, @RequestParam @Nullable PumpPlace place, Model model) {
        model.addAttribute("q", q);
        model.addAttribute("place", place);
        model.addAttribute("places", words.all(PumpPlace.class));
        model.addAttribute("pumps", lists.pumps(q, place, 200));
        return "fleet/pumps";
    }

    @GetMapping("/pumps/{id}")
    @ForField
    String show(@PathVariable UUID id, Model model) {
        model.addAttribute("pump", fleet.pump(new PumpId(id)));
        model.addAttribute("details", register.read(new PumpId(id)).details());
        model.addAttribute("fittings", lists.fittingsOfPump(id));
        return "fleet/pump";
    }

    @GetMapping("/pumps/new")
    String blank(Model model) {
        model.addAttribute("form", new PumpForm(Uuids.next(), null, null, null, null, Ownership.COMPANY, null, null));
        return form(model);
    }

    private String form(Model model) {
        model.addAttribute("models", words.models());
        model.addAttribute("owners", words.all(Ownership.class));
        return FORM;
    }

    @PostMapping("/pumps")
    ModelAndView create(
            @Valid @ModelAttribute("form") PumpForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        PumpId id = new PumpId(form.id() == null ? Uuids.next() : form.id());
        if (!saving.did(errors, () -> register.register(id, form.details()))) {
            return Saving.again(form(model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.pumpRegistered"));
        return new ModelAndView("redirect:/pumps/" + id);
    }

    @GetMapping("/pumps/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        var present = register.read(new PumpId(id));
        model.addAttribute("id", id);
        model.addAttribute("form", PumpForm.of(present.details(), present.version()));
        return form(model);
    }

    @PostMapping("/pumps/{id}/edit")
    ModelAndView change(
            @PathVariable("id") UUID pump,
            @Valid @ModelAttribute("form") PumpForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        PumpId id = new PumpId(pump);
        int version = form.version() == null ? 0 : form.version();
        try {
            if (!saving.did(errors, () -> register.edit(id, version, form.details()))) {
                return Saving.again(form(model), model).addObject("form", form).addObject("id", pump);
            }
        } catch (OptimisticLockingFailureException lost) {
            var present = register.read(id);
            return LostUpdate.between(form, PumpForm.of(present.details(), present.version()), "fleet.pump.")
                    .page(form(model), model, present.version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.pumpSaved"));
        return new ModelAndView("redirect:/pumps/" + id);
    }

    @GetMapping("/pumps/{id}/move")
    String move(@PathVariable UUID id, Model model) {
        model.addAttribute("form", new MoveForm(PumpPlace.WORKSHOP, null, null));
        return movePage(id, model);
    }

    private String movePage(UUID id, Model model) {
        model.addAttribute("pump", fleet.pump(new PumpId(id)));
        model.addAttribute("places", words.some(PumpPlace.WORKSHOP, PumpPlace.STORE, PumpPlace.RETIRED));
        return "fleet/pump-move";
    }

    @PostMapping("/pumps/{id}/move")
    ModelAndView moved(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") MoveForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        boolean done = saving.did(
                errors,
                () -> register.move(
                        new PumpId(id),
                        Given.need(form.place(), "Choose where it goes."),
                        Given.need(form.on(), "Give the day."),
                        form.reason()));
        if (!done) {
            return Saving.again(movePage(id, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.noted"));
        return new ModelAndView("redirect:/pumps/" + id);
    }

    @GetMapping("/installs/{install}/swap")
    String swap(@PathVariable UUID install, @RequestParam @Nullable String q, Model model) {
        model.addAttribute("form", new SwapForm(null, 1, null, null, PumpPlace.WORKSHOP, null, null));
        return swapPage(install, q, model);
    }

    private String swapPage(UUID install, @Nullable String q, Model model) {
        model.addAttribute("install", fleet.install(new InstallId(install)));
        model.addAttribute("q", q);
        model.addAttribute(
                "pumps",
                (q == null || q.isBlank() ? lists.sparePumps(30) : lists.pumps(q, null, 30))
                        .stream()
                                .filter(pump -> pump.place() != PumpPlace.RETIRED && !install.equals(pump.install()))
                                .toList());
        model.addAttribute("places", words.some(PumpPlace.WORKSHOP, PumpPlace.STORE, PumpPlace.RETIRED));
        return "fleet/pump-swap";
    }

    @PostMapping("/installs/{install}/swap")
    ModelAndView swapped(
            @PathVariable UUID install,
            @Valid @ModelAttribute("form") SwapForm form,
            BindingResult errors,
            @RequestParam @Nullable String q,
            Model model,
            RedirectAttributes redirect) {
        if (form.pump() != null && !Boolean.TRUE.equals(form.takeAway()) && worksElsewhere(form.pump(), install)) {
            errors.rejectValue("pump", "fleet.swap.atWork");
        }
        boolean done = saving.did(errors, () -> register.fit(command(install, form)));
        if (!done) {
            return Saving.again(swapPage(install, q, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.pumpFittedTakeNew"));
        return new ModelAndView("redirect:/installs/" + install);
    }

    private boolean worksElsewhere(UUID pump, UUID install) {
        InstallId there = fleet.pump(new PumpId(pump)).install();
        return there != null && !there.value().equals(install);
    }

    private static FitPump command(UUID install, SwapForm form) {
        return new FitPump(
                new PumpId(Given.need(form.pump(), "Choose the pump.")),
                new InstallId(install),
                Given.need(form.placeNo(), "Give the place."),
                Given.need(form.on(), "Give the day."),
                Boolean.TRUE.equals(form.loan()),
                Given.need(form.oldGoesTo(), "Say where the old pump goes."),
                form.reason());
    }
}
