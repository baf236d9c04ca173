package app.ramkeeper.fleet.web;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.fleet.BaselineDetails;
import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.fleet.ConfigurationCard;
import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.fleet.ConfigurationId;
import app.ramkeeper.fleet.ElementKind;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallWorks;
import app.ramkeeper.fleet.NewComponent;
import app.ramkeeper.fleet.RunningState;
import app.ramkeeper.fleet.SystemElement;
import app.ramkeeper.fleet.SystemRegister;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Positive;
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
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What happens to an install by date: layout, handing over, running state, retiring, components, system. */
@Controller
@ForOffice
@RequestMapping("/installs/{id}")
class InstallWorkPages {

    /** From which day on the install does what. */
    record StateForm(
            @NotNull @Nullable RunningState state,
            @NotNull @PastOrPresent @Nullable LocalDate from,
            @Size(max = 1000) @Nullable String reason) {}

    /** A component that was fitted, or (kind given) something of the system round the pump. */
    record PieceForm(
            @Nullable UUID id,
            @Nullable ComponentPosition position,
            @Nullable UUID part,
            @PastOrPresent @Nullable LocalDate fittedOn,
            @Nullable Boolean replaces,
            @Size(max = 100) @Nullable String batch,
            @Size(max = 100) @Nullable String serial,
            @Positive @Nullable Double ratingBar,
            @Nullable ElementKind kind,
            @Size(max = 200) @Nullable String name,
            @Size(max = 1000) @Nullable String note) {}

    private final Fleet fleet;
    private final InstallWorks works;
    private final SystemRegister system;
    private final InstallLists lists;
    private final Words words;
    private final Saving saving;

    InstallWorkPages(
            Fleet fleet, InstallWorks works, SystemRegister system, InstallLists lists, Words words, Saving saving) {
        this.fleet = fleet;
        this.works = works;
        this.system = system;
        this.lists = lists;
        this.words = words;
        this.saving = saving;
    }

    @GetMapping("/configuration/new")
    String configure(@PathVariable UUID id, Model model) {
        var install = fleet.install(new InstallId(id));
        var present = install.configuration();
        model.addAttribute("install", install);
        model.addAttribute(
                "layout",
                ConfigurationForm.of(present == null ? ConfigurationDetails.unknown() : present.details(), null, null));
        return "fleet/configuration-new";
    }

    @PostMapping("/configuration")
    ModelAndView configured(
            @PathVariable UUID id,
            @Valid @ModelAttribute("layout") ConfigurationForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        InstallId install = new InstallId(id);
        LocalDate from = form.from();
        if (from == null && !errors.hasErrors()) {
            errors.rejectValue("from", "NotNull", "Give the first day of the new layout or setting.");
        }
        boolean done = saving.did(errors, () -> {
            LocalDate day = Given.need(from, "Give the day.");
            works.changeConfiguration(install, day, form.reason(), form.details(), form.baseline(day));
        });
        if (!done) {
            model.addAttribute("install", fleet.install(install));
            return Saving.again("fleet/configuration-new", model).addObject("layout", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.newConfigurationKeptThe"));
        return new ModelAndView("redirect:/installs/" + id);
    }

    @GetMapping("/configuration/{configuration}/edit")
    String correct(@PathVariable UUID id, @PathVariable UUID configuration, Model model) {
        var present = works.read(new ConfigurationId(configuration));
        ConfigurationCard card = card(id, configuration);
        model.addAttribute("install", fleet.install(new InstallId(id)));
        model.addAttribute("configuration", configuration);
        model.addAttribute(
                "layout", ConfigurationForm.of(present.details(), present.version(), card.reason(), card.baseline()));
        return "fleet/configuration-edit";
    }

    @PostMapping("/configuration/{configuration}/edit")
    ModelAndView corrected(
            @PathVariable UUID id,
            @PathVariable UUID configuration,
            @Valid @ModelAttribute("layout") ConfigurationForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        model.addAttribute("install", fleet.install(new InstallId(id)));
        model.addAttribute("configuration", configuration);
        ConfigurationId which = new ConfigurationId(configuration);
        try {
            if (!saving.did(errors, () -> correct(card(id, configuration), form))) {
                return Saving.again("fleet/configuration-edit", model).addObject("layout", form);
            }
        } catch (OptimisticLockingFailureException lost) {
            var present = works.read(which);
            return LostUpdate.between(
                            form,
                            ConfigurationForm.of(
                                    present.details(),
                                    present.version(),
                                    form.reason(),
                                    card(id, configuration).baseline()),
                            "fleet.configuration.")
                    .page("fleet/configuration-edit", model, present.version());
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.configurationCorrected"));
        return new ModelAndView("redirect:/installs/" + id);
    }

    private ConfigurationCard card(UUID install, UUID configuration) {
        return fleet.configurations(new InstallId(install)).stream()
                .filter(card -> card.id().value().equals(configuration))
                .findFirst()
                .orElseThrow(() -> new Missing("configuration", configuration));
    }

    /** The baseline may have been measured later; one that stays as it was keeps the report it came from. */
    private void correct(ConfigurationCard present, ConfigurationForm form) {
        works.correctConfiguration(present.id(), form.versionOrFirst(), form.reason(), form.details());
        ConfigurationForm before =
                ConfigurationForm.of(form.details(), form.version(), form.reason(), present.baseline());
        LocalDate day = form.takenOn() == null ? present.from() : form.takenOn();
        if (form.sameBaseline(before)) {
            return;
        }
        BaselineDetails baseline = form.baseline(Given.need(day, "Give the day the baseline was taken."));
        if (baseline == null) {
            throw new Conflict("A baseline cannot be emptied: give at least one reading.");
        }
        works.keepBaseline(present.id(), baseline);
    }

    @GetMapping("/state")
    String state(@PathVariable UUID id, Model model) {
        model.addAttribute("form", new StateForm(null, null, null));
        return statePage(id, model);
    }

    private String statePage(UUID id, Model model) {
        model.addAttribute("install", fleet.install(new InstallId(id)));
        model.addAttribute("states", words.all(RunningState.class));
        return "fleet/install-state";
    }

    /** A built install that starts to run for the first time is commissioned; one that ends for good is retired. */
    @PostMapping("/state")
    ModelAndView changed(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") StateForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        if (!saving.did(errors, () -> change(new InstallId(id), form))) {
            return Saving.again(statePage(id, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.noted"));
        return new ModelAndView("redirect:/installs/" + id);
    }

    private void change(InstallId id, StateForm form) {
        RunningState state = Given.need(form.state(), "Choose what it does.");
        LocalDate from = Given.need(form.from(), "Give the day.");
        if (fleet.install(id).state() == null && state == RunningState.RUNNING) {
            works.commission(id, from, null);
        } else if (state == RunningState.RETIRED) {
            works.retire(id, from, form.reason());
        } else {
            works.changeState(id, state, from, form.reason());
        }
    }

    @GetMapping("/system")
    String system(@PathVariable UUID id, Model model) {
        model.addAttribute(
                "form", new PieceForm(Uuids.next(), null, null, null, null, null, null, null, null, null, null));
        return systemPage(id, model);
    }

    private String systemPage(UUID id, Model model) {
        InstallId install = new InstallId(id);
        model.addAttribute("install", fleet.install(install));
        model.addAttribute("components", lists.components(install));
        model.addAttribute("elements", lists.elements(install));
        model.addAttribute("positions", words.all(ComponentPosition.class));
        model.addAttribute("kinds", words.all(ElementKind.class));
        model.addAttribute("parts", words.parts());
        return "fleet/install-system";
    }

    @PostMapping("/system/{what}")
    ModelAndView add(
            @PathVariable UUID id,
            @PathVariable String what,
            @Valid @ModelAttribute("form") PieceForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        if (!saving.did(errors, () -> keep(id, what, form))) {
            return Saving.again(systemPage(id, model), model).addObject("form", form);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.noted"));
        return new ModelAndView("redirect:/installs/" + id + "/system");
    }

    private void keep(UUID id, String what, PieceForm form) {
        UUID row = form.id() == null ? Uuids.next() : form.id();
        InstallId install = new InstallId(id);
        if ("element".equals(what)) {
            system.add(
                    row,
                    install,
                    new SystemElement(
                            Given.need(form.kind(), "Choose what stands there."),
                            Given.need(form.name(), "Give it a name."),
                            null,
                            form.note()));
            return;
        }
        UUID part = form.part();
        works.fitComponent(
                row,
                new NewComponent(
                        install,
                        null,
                        Given.need(form.position(), "Choose where it sits."),
                        part == null ? null : new PartId(part),
                        form.fittedOn(),
                        form.batch(),
                        form.serial(),
                        form.ratingBar(),
                        form.note(),
                        Boolean.TRUE.equals(form.replaces())));
    }

    @PostMapping("/system/{what}/{row}/remove")
    String remove(
            @PathVariable UUID id, @PathVariable String what, @PathVariable UUID row, RedirectAttributes redirect) {
        if ("element".equals(what)) {
            system.removeElement(new InstallId(id), row);
        } else {
            system.removeComponent(new InstallId(id), row);
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.struckOut"));
        return "redirect:/installs/" + id + "/system";
    }
}
