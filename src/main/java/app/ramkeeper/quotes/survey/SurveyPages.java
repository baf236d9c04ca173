package app.ramkeeper.quotes.survey;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.files.PhotoRefused;
import app.ramkeeper.visits.files.Photos;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
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

/** The survey form, for the desk and the phone. Whatever is sent is kept first and looked at afterwards. */
@Controller
@ForField
class SurveyPages {

    private static final String VIEW = "surveys/form";

    private final Surveys surveys;
    private final Enquiries enquiries;
    private final SurveyChoices choices;
    private final Photos photos;

    SurveyPages(Surveys surveys, Enquiries enquiries, SurveyChoices choices, Photos photos) {
        this.surveys = surveys;
        this.enquiries = enquiries;
        this.choices = choices;
        this.photos = photos;
    }

    @PostMapping("/enquiries/{id}/surveys")
    String start(@PathVariable UUID id) {
        enquiries.view(id);
        return "redirect:/surveys/" + surveys.start(id, Map.of());
    }

    /** Another survey of the same place, as of the dry season: the water is measured anew, the rest is there. */
    @PostMapping("/surveys/{id}/again")
    String again(@PathVariable UUID id) {
        SurveyRow row = surveys.row(id);
        return "redirect:/surveys/" + surveys.start(row.enquiry(), SurveyForms.again(row.typed()));
    }

    @GetMapping("/surveys/{id}")
    String form(@PathVariable UUID id, @RequestParam(required = false) @Nullable String check, Model model) {
        SurveyRow row = surveys.row(id);
        TypedForm form = SurveyForms.of(row);
        if (check != null) {
            SurveyReader.read(form, new SurveyId(id), new EnquiryId(row.enquiry()));
        }
        show(model, row, form);
        return VIEW;
    }

    @PostMapping("/surveys/{id}")
    ModelAndView save(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            @RequestParam(required = false) @Nullable List<MultipartFile> photoFiles,
            @RequestParam(required = false) @Nullable MultipartFile track,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        SurveyRow row = surveys.row(id);
        TypedForm form = new TypedForm(posted);
        if (row.done()) {
            throw new Conflict("A design was chosen on this survey, so it stays as it is. Measure again instead.");
        }
        boolean more = moreRows(form);
        boolean walked = walked(form, track);
        Map<String, String> typed = SurveyForms.kept(posted, form);
        TypedForm kept = form;
        List.of("profile", "position", "altitudeM", "demands", "sources").forEach(name -> {
            if (!kept.value(name).isEmpty()) {
                typed.put(name, kept.value(name));
            }
        });
        LocalDate on = new TypedForm(posted).date("surveyedOn");
        if (!surveys.keep(id, version(form), on, typed)) {
            SurveyRow present = surveys.row(id);
            // The page's own keeping may have come in between: the same text is no lost update.
            if (!present.typed().equals(typed)) {
                return lost(model, present, form);
            }
        }
        keep(photoFiles == null ? List.of() : photoFiles, form, id, new PersonId(user.person()));
        SurveyRow saved = surveys.row(id);
        if (form.hasProblems() || more || walked) {
            show(model, saved, form);
            return form.hasProblems() ? Saving.again(VIEW, model) : new ModelAndView(VIEW, model.asMap());
        }
        if (!form.value("designs").isEmpty()) {
            if (SurveyReader.read(form, new SurveyId(id), new EnquiryId(row.enquiry())) != null) {
                return new ModelAndView("redirect:/surveys/" + id + "/designs");
            }
            show(model, saved, form);
            return Saving.again(VIEW, model);
        }
        flash.addFlashAttribute("saved", Saved.of("surveys.saved.keptGoOnWhenever"));
        return new ModelAndView("redirect:/surveys/" + id);
    }

    static int version(TypedForm form) {
        String version = form.value("version");
        return version.matches("\\d{1,9}") ? Integer.parseInt(version) : -1;
    }

    private static boolean moreRows(TypedForm form) {
        String which = form.value("more");
        if (which.equals("demands") || which.equals("sources")) {
            form.set(which, form.rows(which, 3) + 3);
            return true;
        }
        return false;
    }

    /** Puts the profile of a track into the field; the old profile stays if the file cannot be read. */
    private static boolean walked(TypedForm form, @Nullable MultipartFile track) {
        if (track == null || track.isEmpty()) {
            return false;
        }
        try {
            Track.Walked walked = Track.read(track.getBytes(), form.ticked("fromTank"));
            form.set("profile", ProfileText.write(walked.profile()));
            fill(form, "position", walked.pump());
            fill(form, "altitudeM", Math.round(walked.profile().get(0).levelM()));
        } catch (ProfileText.Unreadable unreadable) {
            form.problem("track", unreadable.sentence());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return true;
    }

    private static void fill(TypedForm form, String name, Object found) {
        if (form.value(name).isEmpty()) {
            form.set(name, found);
        }
    }

    private void keep(List<MultipartFile> files, TypedForm form, UUID survey, PersonId by) {
        for (MultipartFile file : files) {
            if (file.isEmpty()) {
                continue;
            }
            try {
                surveys.add(
                        survey, photos.keep(file.getBytes(), file.getOriginalFilename(), file.getContentType(), by));
            } catch (PhotoRefused refused) {
                form.problem("photoFiles", refused.sentence());
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
    }

    private ModelAndView lost(Model model, SurveyRow present, TypedForm form) {
        List<LostUpdate.Difference> differences = new ArrayList<>();
        TreeSet<String> names = new TreeSet<>(present.typed().keySet());
        names.addAll(form.names());
        for (String name : names) {
            String theirs = present.typed().getOrDefault(name, "");
            if (choices.isField(name) && !theirs.equals(form.value(name))) {
                differences.add(
                        new LostUpdate.Difference(form.id(name), choices.label(name), form.value(name), theirs));
            }
        }
        show(model, present, form);
        return new LostUpdate(differences).page(VIEW, model, present.version());
    }

    private void show(Model model, SurveyRow row, TypedForm form) {
        model.addAttribute("form", form);
        model.addAttribute("survey", row);
        model.addAttribute("version", row.version());
        model.addAttribute("enquiry", enquiries.view(row.enquiry()));
        model.addAttribute("choices", choices);
        model.addAttribute("photos", surveys.photos(row.id()));
    }

    @GetMapping("/surveys/photos/{id}")
    ResponseEntity<byte[]> photo(@PathVariable UUID id) {
        Photos.Shown photo = surveys.photo(id).orElseThrow(() -> new Missing("photo", id));
        return ResponseEntity.ok()
                .contentType(MediaType.parseMediaType(photo.mediaType()))
                .header("Content-Security-Policy", "default-src 'none'; sandbox")
                .header("X-Content-Type-Options", "nosniff")
                .body(photo.content());
    }
}
