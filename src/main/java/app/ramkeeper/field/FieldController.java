package app.ramkeeper.field;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.ReportRefused.Problem;
import app.ramkeeper.visits.files.PhotoRefused;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** What the phone's pages ask of the server: who is signed in, what to take along, and the intake. JSON only. */
@RestController
@ForField
class FieldController {

    private static final String UUID_FORM =
            "[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}";
    private static final URI KEYS_EXPLAINED = URI.create("/help#phone");

    private final Bundle bundle;
    private final Intake intake;
    private final PhotoIntake photos;
    private final Devices devices;
    private final JsonMapper json;
    private final Clock clock;

    FieldController(Bundle bundle, Intake intake, PhotoIntake photos, Devices devices, JsonMapper json, Clock clock) {
        this.bundle = bundle;
        this.intake = intake;
        this.photos = photos;
        this.devices = devices;
        this.json = PhoneVisits.reader(json);
        this.clock = clock;
    }

    /** Who is signed in, the proof for writing, and the time here. */
    record Session(UUID person, String name, String csrfHeader, String csrf, Instant now) {}

    @GetMapping("/field/session")
    Session session(@AuthenticationPrincipal CurrentUser user, CsrfToken token) {
        return new Session(user.person(), user.name(), token.getHeaderName(), token.getToken(), clock.instant());
    }

    @GetMapping(value = "/field/bundle", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<String> bundle(
            @AuthenticationPrincipal CurrentUser user,
            @RequestHeader(value = "If-None-Match", required = false) @Nullable String known) {
        String text = bundle.of(new PersonId(user.person()));
        String tag = "\"" + Intake.sha256(text) + "\"";
        if (known != null && known.contains(Intake.sha256(text))) {
            return ResponseEntity.status(HttpStatus.NOT_MODIFIED).eTag(tag).build();
        }
        return ResponseEntity.ok().eTag(tag).body(text);
    }

    /** A phone's public key, base64. */
    record NewDevice(String key) {}

    /** The id a phone signs under. */
    record Device(UUID id) {}

    @PostMapping("/field/devices")
    Device register(@RequestBody NewDevice device, @AuthenticationPrincipal CurrentUser user) {
        try {
            byte[] key = Base64.getDecoder().decode(device.key());
            return new Device(devices.register(new PersonId(user.person()), key));
        } catch (IllegalArgumentException | NullPointerException noKey) {
            throw Intake.refused("key", "This is no public key of the kind phones make here.");
        }
    }

    @PostMapping("/field/entries")
    Intake.Answer take(
            @RequestHeader(value = "Idempotency-Key", required = false) @Nullable String key,
            @RequestBody String body,
            @AuthenticationPrincipal CurrentUser user) {
        UUID id = key(key);
        Entry entry = entry(body);
        if (!entry.id().equals(id)) {
            throw new KeyRefused("The Idempotency-Key must be the id of the visit that is sent.");
        }
        return intake.take(entry, new PersonId(user.person()));
    }

    @PostMapping("/field/photos")
    PhotoIntake.Answer photo(
            @RequestHeader(value = "Idempotency-Key", required = false) @Nullable String key,
            @RequestParam UUID entry,
            @RequestParam String hash,
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String caption,
            @RequestParam(required = false) @Nullable String taken,
            @RequestBody byte[] content,
            @AuthenticationPrincipal CurrentUser user) {
        if (!hash.matches("[0-9a-f]{64}")) {
            throw Intake.refused("hash", "The photo's hash is 64 hexadecimal digits.");
        }
        if (caption != null && caption.length() > 300) {
            throw Intake.refused("caption", "This text is too long: at most 300 characters.");
        }
        return photos.take(
                key(key),
                entry,
                content,
                hash,
                PhotoIntake.Shows.of(kind, caption),
                caption,
                instant(taken),
                new PersonId(user.person()));
    }

    private static @Nullable Instant instant(@Nullable String text) {
        try {
            return text == null || text.isEmpty() ? null : Instant.parse(text);
        } catch (DateTimeParseException noTime) {
            throw Intake.refused("taken", "The photo's time is not a time.");
        }
    }

    private Entry entry(String body) {
        try {
            Entry entry = json.readValue(body, Entry.class);
            if (entry.id() == null || entry.person() == null || entry.text() == null || entry.hash() == null) {
                throw Intake.refused("entry", "An entry has id, person, text and hash.");
            }
            if (entry.text().length() > 1_000_000) {
                throw Intake.refused("text", "This visit is too long to send.");
            }
            if (entry.text().indexOf('\0') >= 0) {
                throw Intake.refused("text", "The text holds a control character (code 0).");
            }
            return entry;
        } catch (JacksonException broken) {
            throw Intake.refused("entry", "This is no entry of a phone.");
        }
    }

    private static UUID key(@Nullable String key) {
        if (key == null) {
            throw new KeyRefused("What a phone sends needs an Idempotency-Key.");
        }
        if (!key.matches(UUID_FORM)) {
            throw new KeyRefused("The Idempotency-Key is the id of what is sent: a UUID.");
        }
        return UUID.fromString(key);
    }

    /** Says that a request to the intake has no usable key. */
    static final class KeyRefused extends RuntimeException {
        KeyRefused(String sentence) {
            super(sentence);
        }
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> refused(KeyRefused failure) {
        ProblemDetail problem = ProblemDetail.forStatusAndDetail(HttpStatus.BAD_REQUEST, failure.getMessage());
        problem.setType(KEYS_EXPLAINED);
        return answer(problem);
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> refused(ReportRefused failure) {
        ProblemDetail problem =
                ProblemDetail.forStatusAndDetail(HttpStatus.UNPROCESSABLE_CONTENT, failure.getMessage());
        List<Problem> problems = failure.problems();
        problem.setProperty("problems", problems);
        return answer(problem);
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> refused(PhotoRefused failure) {
        return answer(ProblemDetail.forStatusAndDetail(failure.status(), failure.sentence()));
    }

    private static ResponseEntity<ProblemDetail> answer(ProblemDetail problem) {
        return ResponseEntity.status(problem.getStatus())
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(problem);
    }
}
