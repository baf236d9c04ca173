package app.ramkeeper.field;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.web.Saved;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** Pins: a button on the site sheet, and for phones one list that is replaced whole by who has seen its present state. */
@Controller
@ForField
class PinController {

    private final Pins pins;
    private final JsonMapper json;

    PinController(Pins pins, JsonMapper json) {
        this.pins = pins;
        this.json = json;
    }

    @PostMapping("/sites/{id}/pin")
    String pin(
            @PathVariable UUID id,
            @RequestParam(defaultValue = "false") boolean pinned,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        try {
            pins.set(new PersonId(user.person()), new SiteId(id), pinned);
            flash.addFlashAttribute(
                    "saved", pinned ? Saved.of("field.saved.pinnedYourPhoneTakes") : Saved.of("field.saved.unpinned"));
        } catch (Pins.TooMany full) {
            flash.addFlashAttribute("pinRefused", full.getMessage());
        }
        return "redirect:/sites/" + id + "/sheet";
    }

    /** The pinned sites. */
    record Pinned(List<UUID> sites) {}

    @GetMapping("/field/pins")
    ResponseEntity<Pinned> list(@AuthenticationPrincipal CurrentUser user) {
        return answer(pins.of(new PersonId(user.person())));
    }

    @PutMapping("/field/pins")
    ResponseEntity<Pinned> replace(
            @RequestHeader(value = "If-Match", required = false) @Nullable String seen,
            @RequestBody(required = false) @Nullable String body,
            @AuthenticationPrincipal CurrentUser user) {
        if (seen == null) {
            throw new Unmarked();
        }
        return answer(pins.replace(new PersonId(user.person()), seen.replace("\"", ""), wanted(body)));
    }

    private Set<UUID> wanted(@Nullable String body) {
        try {
            return new LinkedHashSet<>(List.copyOf(
                    json.readValue(body == null ? "" : body, Pinned.class).sites()));
        } catch (JacksonException | NullPointerException broken) {
            throw Intake.refused("sites", "Pins are a list of sites.");
        }
    }

    private static ResponseEntity<Pinned> answer(List<UUID> sites) {
        return ResponseEntity.ok().eTag("\"" + Pins.mark(sites) + "\"").body(new Pinned(sites));
    }

    /** Says that a change came without the mark of what it is based on. */
    static final class Unmarked extends RuntimeException {}

    @ExceptionHandler(Unmarked.class)
    ResponseEntity<ProblemDetail> unmarked() {
        return problem(HttpStatus.PRECONDITION_REQUIRED, "Say by If-Match which list of pins this change is based on.");
    }

    @ExceptionHandler(Pins.Changed.class)
    ResponseEntity<ProblemDetail> changed() {
        return problem(
                HttpStatus.PRECONDITION_FAILED, "The pins were changed elsewhere meanwhile. Look again, then change.");
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> full(Pins.TooMany full) {
        return problem(HttpStatus.UNPROCESSABLE_CONTENT, String.valueOf(full.getMessage()));
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> refused(app.ramkeeper.visits.ReportRefused refused) {
        return problem(HttpStatus.UNPROCESSABLE_CONTENT, String.valueOf(refused.getMessage()));
    }

    private static ResponseEntity<ProblemDetail> problem(HttpStatus status, String sentence) {
        return ResponseEntity.status(status)
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(ProblemDetail.forStatusAndDetail(status, sentence));
    }
}
