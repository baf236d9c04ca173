package app.ramkeeper.visits.record;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.Limits;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Recorded;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.VisitRecorder;
import app.ramkeeper.visits.files.PhotoRefused;
import app.ramkeeper.visits.files.Photos;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The form by which a visit is recorded or a report corrected. The id of the report is made with the form. */
@Controller
@ForField
class RecordPages {

    private static final String VIEW = "visits/record";

    /** Noted in the form when "all as usual" stands beside a finding or a reading that is out of range. */
    private static final String UNUSUAL = "unusual";

    private final RecordStart start;
    private final RecordScreen screen;
    private final Fleet fleet;
    private final VisitRecorder recorder;
    private final Photos photos;
    private final TaskParts parts;
    private final BaselineAsked baseline;
    private final Clock clock;

    RecordPages(
            RecordStart start,
            RecordScreen screen,
            Fleet fleet,
            VisitRecorder recorder,
            Photos photos,
            TaskParts parts,
            BaselineAsked baseline,
            Clock clock) {
        this.start = start;
        this.parts = parts;
        this.baseline = baseline;
        this.screen = screen;
        this.fleet = fleet;
        this.recorder = recorder;
        this.photos = photos;
        this.clock = clock;
    }

    @GetMapping("/visits/{id}/record")
    String ofVisit(@PathVariable UUID id, Model model, @AuthenticationPrincipal CurrentUser user) {
        SiteId site = start.siteOf(id).orElseThrow(() -> new Missing("visit", id));
        screen.show(model, start.ofVisit(id, new PersonId(user.person())), fleet.site(site), user);
        return VIEW;
    }

    @GetMapping("/sites/{id}/record")
    String ofSite(@PathVariable UUID id, Model model, @AuthenticationPrincipal CurrentUser user) {
        SiteId site = fleet.site(new SiteId(id)).id();
        screen.show(model, start.ofSite(site, new PersonId(user.person())), fleet.site(site), user);
        return VIEW;
    }

    @GetMapping("/visits/reports/{id}/correct")
    String correction(@PathVariable UUID id, Model model, @AuthenticationPrincipal CurrentUser user) {
        TypedForm form = start.ofReport(new ReportId(id));
        screen.show(model, form, fleet.site(new SiteId(UUID.fromString(form.value("site")))), user);
        return VIEW;
    }

    @PostMapping("/sites/{id}/record")
    ModelAndView record(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            @RequestParam(required = false) @Nullable List<MultipartFile> photoFiles,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        TypedForm form = new TypedForm(posted);
        PersonId person = new PersonId(user.person());
        SiteId site = fleet.site(new SiteId(id)).id();
        keep(photoFiles == null ? List.of() : photoFiles, form, person);
        if (MoreRows.added(form)) {
            screen.show(model, form, fleet.site(site), user);
            return new ModelAndView(VIEW, model.asMap());
        }
        Recorded recorded = take(form, site, person);
        if (recorded == null) {
            screen.show(model, form, fleet.site(site), user);
            return Saving.again(VIEW, model);
        }
        if (recorded instanceof Recorded.Held) {
            flash.addFlashAttribute("saved", Saved.of("visits.saved.keptThisVisitWas"));
            return new ModelAndView("redirect:/sites/" + site.value() + "/sheet");
        }
        flash.addFlashAttribute(
                "saved", Saved.of(form.ticked(UNUSUAL) ? "visits.saved.recordedUnusual" : "visits.saved.recorded"));
        return new ModelAndView("redirect:/visits/reports/" + recorded.report().value());
    }

    private @Nullable Recorded take(TypedForm form, SiteId site, PersonId person) {
        List<UUID> installs =
                screen.installs(site, form).stream().map(i -> i.id().value()).toList();
        FormReader reader =
                new FormReader(form, installs, clock.getZone(), new PartsAsked(form, parts, person.value()));
        RecordVisit command = reader.read(site, person);
        if (command == null) {
            return null;
        }
        form.set(UNUSUAL, asUsual(form) && !command.findings().isEmpty() ? "true" : null);
        ask(form, reader, command);
        baseline.ask(form, command);
        MeantSo.ask(form, command);
        recorder.problems(command).forEach(p -> form.problem(FieldOf.path(p.path(), reader), p.sentence()));
        if (form.hasProblems()) {
            return null;
        }
        try {
            return recorder.record(command, person);
        } catch (ReportRefused refused) {
            refused.problems().forEach(p -> form.problem(FieldOf.path(p.path(), reader), p.sentence()));
            return null;
        }
    }

    /** Of a visit nobody planned the same tick only says that what is listed was done. */
    private static boolean asUsual(TypedForm form) {
        return form.ticked("asUsual") && !form.value("visit").isEmpty();
    }

    /** Asks about readings that are hardly possible, unless the writer has said that they are as read. */
    private void ask(TypedForm form, FormReader reader, RecordVisit command) {
        for (InstallCard install : screen.installs(command.site(), form)) {
            List<RecordVisit.Reading> here = command.readings().stream()
                    .filter(r -> r.install().equals(install.id()))
                    .toList();
            Plausible plausible = new Plausible(
                    here,
                    fleet.configurationOn(install.id(), command.attendedOn()).orElse(null));
            for (RecordVisit.Reading reading : here) {
                String name = reader.readings.get(command.readings().indexOf(reading));
                Optional<String> impossible = Limits.problem(reading);
                if (impossible.isPresent()) {
                    form.problem(name + ".value", impossible.get());
                    continue;
                }
                plausible.question(reading).ifPresent(question -> {
                    if (asUsual(form)) {
                        form.set(UNUSUAL, "true");
                    }
                    if (!reading.asRead()) {
                        form.problem(name + ".value", question);
                        form.set(name + ".asks", "true");
                    }
                });
            }
            String shut = "float." + install.id().value();
            if (plausible.shutAtTheEnd() && form.value(shut).isEmpty()) {
                form.problem(shut, "Nothing arrives, but the pump beats. Is a float or valve at the tank shut?");
            }
        }
    }

    private void keep(List<MultipartFile> files, TypedForm form, PersonId by) {
        for (MultipartFile file : files) {
            if (!file.isEmpty()) {
                keep(file, form, by);
            }
        }
    }

    private void keep(MultipartFile file, TypedForm form, PersonId by) {
        try {
            Photos.Kept kept = photos.keep(file.getBytes(), file.getOriginalFilename(), file.getContentType(), by);
            form.add("photo", kept.sha256());
            if (kept.takenAt() != null) {
                form.set("taken." + kept.sha256(), kept.takenAt());
            }
        } catch (PhotoRefused refused) {
            form.problem("photoFiles", refused.sentence());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
