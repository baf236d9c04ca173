package app.ramkeeper.field;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.HeldBecause;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Recorded;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.ReportRefused.Problem;
import app.ramkeeper.visits.VisitRecorder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/**
 * Takes in what phones send. An entry and what it does are one transaction; sending it again gives the first answer; what
 * cannot be put in its place is kept whole for the office. Only a mistake the writer can mend is refused.
 */
@Service
@ForField
class Intake {

    private static final Logger LOG = LoggerFactory.getLogger(Intake.class);

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final VisitRecorder recorder;
    private final Devices devices;
    private final Checklists checklists;
    private final TransactionTemplate transaction;
    private final Clock clock;

    Intake(
            JdbcClient jdbc,
            JsonMapper json,
            VisitRecorder recorder,
            Devices devices,
            Checklists checklists,
            TransactionTemplate transaction,
            Clock clock) {
        this.jdbc = jdbc;
        this.json = PhoneVisits.reader(json);
        this.recorder = recorder;
        this.devices = devices;
        this.checklists = checklists;
        this.transaction = transaction;
        this.clock = clock;
    }

    /**
     * What became of an entry; the phone lets go of it only if id and hash are its own.
     *
     * @param repeated it had arrived before, and this is what became of it then
     */
    record Answer(
            UUID id,
            String hash,
            String result,
            boolean repeated,
            @Nullable Long clockAheadS) {}

    /** @throws ReportRefused for what its writer can mend; nothing is recorded then */
    Answer take(Entry entry, PersonId carrier) {
        String hash = sha256(entry.text());
        if (!hash.equals(entry.hash())) {
            throw refused("text", "The text did not arrive as it was sent. It is sent again.");
        }
        RecordVisit command = read(entry);
        Optional<HeldBecause> doubt = doubt(entry, carrier, hash);
        if (doubt.isPresent()) {
            return once(entry, carrier, hash, command, () -> recorder.keepToSettle(command, doubt.get(), carrier));
        }
        PersonId writer = new PersonId(entry.person());
        try {
            return once(entry, carrier, hash, command, () -> recorder.record(command, writer));
        } catch (ReportRefused refused) {
            if (refused.problems().stream().allMatch(Problem::register)) {
                return hold(entry, carrier, hash, command);
            }
            throw refused;
        } catch (Conflict | Missing | DataIntegrityViolationException overtaken) {
            // What was done was possible when it was done; the register has moved on since.
            LOG.warn("Visit {} cannot be put in its place", entry.id(), overtaken);
            return hold(entry, carrier, hash, command);
        }
    }

    private Answer hold(Entry entry, PersonId carrier, String hash, RecordVisit command) {
        return once(
                entry,
                carrier,
                hash,
                command,
                () -> recorder.keepToSettle(command, HeldBecause.REGISTER_CHANGED, new PersonId(entry.person())));
    }

    private RecordVisit read(Entry entry) {
        try {
            PhoneVisit visit = json.readValue(entry.text(), PhoneVisit.class);
            if (!visit.id().equals(entry.id())) {
                throw refused("id", "The visit and its envelope have different ids.");
            }
            checklists.requireHoldPoints(visit);
            return PhoneVisits.command(visit, new PersonId(entry.person()));
        } catch (JacksonException | NullPointerException broken) {
            throw refused("text", "Something in this visit cannot be read: a value is missing or of the wrong kind.");
        } catch (IllegalArgumentException control) {
            throw refused("text", String.valueOf(control.getMessage()));
        }
    }

    /** Why it cannot simply be taken as its writer's, if there is a reason. */
    private Optional<HeldBecause> doubt(Entry entry, PersonId carrier, String hash) {
        boolean own = carrier.value().equals(entry.person());
        UUID device = entry.device();
        if (device == null && own) {
            return Optional.empty();
        }
        if (device == null || !devices.signed(device, entry.person(), entry.id() + "." + hash, signature(entry))) {
            return Optional.of(HeldBecause.SIGNATURE_WRONG);
        }
        boolean open = jdbc.sql(
                        "select exists (select 1 from accounts where person_id = :person and disabled_at is null)")
                .param("person", entry.person())
                .query(Boolean.class)
                .single();
        return open ? Optional.empty() : Optional.of(HeldBecause.WRITER_LOCKED);
    }

    private static byte[] signature(Entry entry) {
        try {
            return entry.signature() == null ? new byte[0] : Base64.getDecoder().decode(entry.signature());
        } catch (IllegalArgumentException noBase64) {
            return new byte[0];
        }
    }

    private Answer once(Entry entry, PersonId carrier, String hash, RecordVisit command, Supplier<Recorded> step) {
        return transaction.execute(status -> {
            jdbc.sql("select pg_advisory_xact_lock(hashtextextended(:id, 0))")
                    .param("id", entry.id().toString())
                    .query((row, n) -> true)
                    .list();
            return before(entry, hash).orElseGet(() -> {
                Recorded recorded = step.get();
                return keep(entry, carrier, hash, command, recorded);
            });
        });
    }

    private Optional<Answer> before(Entry entry, String hash) {
        return jdbc.sql(
                        "select encode(content_hash, 'hex') as hash, result, clock_ahead_s from field_entries where id = :id")
                .param("id", entry.id())
                .query((row, n) -> new Answer(
                        entry.id(),
                        row.getString("hash"),
                        row.getString("result"),
                        true,
                        row.getObject("clock_ahead_s", Long.class)))
                .optional()
                .map(first -> {
                    if (!first.hash().equals(hash)) {
                        throw refused(
                                "id",
                                "This visit was sent before with other content. What was sent first stands; open it at"
                                        + " the desk and correct it there.");
                    }
                    return first;
                });
    }

    private Answer keep(Entry entry, PersonId carrier, String hash, RecordVisit command, Recorded recorded) {
        Instant now = clock.instant();
        Instant sent = entry.sentAt();
        Long ahead = sent == null ? null : Duration.between(now, sent).toSeconds();
        String result = recorded instanceof Recorded.Held ? "HELD" : "APPLIED";
        PhoneVisit visit = json.readValue(entry.text(), PhoneVisit.class);
        jdbc.sql("""
                        insert into field_entries (id, person_id, carried_by, device_id, content_hash, text, result, photos, sent_at, received_at, clock_ahead_s)
                        values (:id, :person, :carrier, (select id from field_devices where id = :device), :hash, :text, :result, :photos, :sent, :now, :ahead)""")
                .param("id", command.id().value())
                .param("person", known(entry.person(), carrier))
                .param("carrier", carrier.value())
                .param("device", entry.device())
                .param("hash", HexFormat.of().parseHex(hash))
                .param("text", entry.text())
                .param("result", result)
                .param("photos", Math.max(0, Math.min(40, visit.photos())))
                .param("sent", sent == null ? null : Timestamp.from(sent))
                .param("now", Timestamp.from(now))
                .param("ahead", ahead)
                .update();
        return new Answer(entry.id(), hash, result, false, ahead);
    }

    /** Somebody of the company: a made-up writer's entry is kept under who carried it in. */
    private UUID known(UUID person, PersonId carrier) {
        return jdbc.sql("select id from people where id = :id")
                .param("id", person)
                .query(UUID.class)
                .optional()
                .orElse(carrier.value());
    }

    static ReportRefused refused(String path, String sentence) {
        return new ReportRefused(List.of(new Problem(path, sentence)));
    }

    static String sha256(String text) {
        return sha256(text.getBytes(StandardCharsets.UTF_8));
    }

    static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}
