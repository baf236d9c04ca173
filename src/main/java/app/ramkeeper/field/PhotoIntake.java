package app.ramkeeper.field;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Text;
import app.ramkeeper.visits.VisitReported;
import app.ramkeeper.visits.files.Photos;
import app.ramkeeper.visits.files.SitePictures;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes in photos after their visit's words; each joins the report at once, or when the office has settled it. */
@Service
@ForField
@Transactional
class PhotoIntake {

    private final JdbcClient jdbc;
    private final Photos photos;
    private final SitePictures pictures;
    private final Clock clock;

    PhotoIntake(JdbcClient jdbc, Photos photos, SitePictures pictures, Clock clock) {
        this.jdbc = jdbc;
        this.photos = photos;
        this.pictures = pictures;
        this.clock = clock;
    }

    /** What a photo shows. */
    enum Shows {
        WORK,
        GATE,
        SIGNATURE;

        /** As the phone says it; an older page marks a signature by its words only. */
        static Shows of(@Nullable String said, @Nullable String caption) {
            if (said == null) {
                return "Signature of the customer".equals(caption) ? SIGNATURE : WORK;
            }
            return Arrays.stream(values())
                    .filter(known -> known.name().equals(said))
                    .findFirst()
                    .orElseThrow(() -> Intake.refused("kind", "A photo shows work, the gate or a signature."));
        }
    }

    /** What arrived: the phone lets go of a photo only if id and hash are its own. */
    record Answer(UUID id, String hash, boolean repeated, int arrived, int expected) {}

    Answer take(
            UUID id,
            UUID entry,
            byte[] content,
            String hash,
            Shows kind,
            @Nullable String caption,
            @Nullable Instant taken,
            PersonId carrier) {
        if (!Intake.sha256(content).equals(hash)) {
            throw Intake.refused("photo", "The photo did not arrive whole. It is sent again.");
        }
        Integer expected = jdbc.sql("select photos from field_entries where id = :id for key share")
                .param("id", entry)
                .query(Integer.class)
                .optional()
                .orElseThrow(() -> Intake.refused("entry", "The words of this visit have not arrived yet."));
        boolean repeated = jdbc.sql("select exists (select 1 from field_photos where id = :id and sent_sha256 = :hash)")
                .param("id", id)
                .param("hash", HexFormat.of().parseHex(hash))
                .query(Boolean.class)
                .single();
        if (!repeated) {
            requireExpected(entry, expected);
            keep(id, entry, content, hash, kind, caption, taken, carrier);
        }
        return new Answer(id, hash, repeated, arrived(entry), expected);
    }

    private void requireExpected(UUID entry, int expected) {
        if (arrived(entry) >= expected) {
            throw Intake.refused("photo", "This visit named fewer photos than have come.");
        }
    }

    private int arrived(UUID entry) {
        return jdbc.sql("select count(*) from field_photos where entry_id = :id")
                .param("id", entry)
                .query(Integer.class)
                .single();
    }

    private void keep(
            UUID id,
            UUID entry,
            byte[] content,
            String hash,
            Shows kind,
            @Nullable String caption,
            @Nullable Instant taken,
            PersonId carrier) {
        String said = Text.clean(caption);
        Photos.Kept kept = photos.keep(content, "photo.jpg", "image/jpeg", carrier);
        jdbc.sql("""
                        insert into field_photos (id, entry_id, sent_sha256, sha256, kind, caption, taken_at, received_at)
                        values (:id, :entry, :sent, :kept, :kind, :caption, :taken, :now) on conflict (id) do nothing""")
                .param("id", id)
                .param("entry", entry)
                .param("sent", HexFormat.of().parseHex(hash))
                .param("kept", HexFormat.of().parseHex(kept.sha256()))
                .param("kind", kind.name())
                .param("caption", said)
                .param("taken", taken == null ? null : Timestamp.from(taken))
                .param("now", Timestamp.from(clock.instant()))
                .update();
        attach(id, entry, kept.sha256(), kind, said, taken, carrier.value());
    }

    private void attach(
            UUID id,
            UUID entry,
            String sha256,
            Shows kind,
            @Nullable String caption,
            @Nullable Instant taken,
            UUID by) {
        if (photos.attach(id, entry, sha256, caption, taken) && kind == Shows.GATE) {
            pictures.addGate(id, entry, sha256, caption, by);
        }
    }

    private record Waiting(
            UUID id,
            String sha256,
            Shows kind,
            @Nullable String caption,
            @Nullable Timestamp takenAt,
            UUID writer) {}

    /** An entry that the office has settled is in the history now, and so are its photos. */
    @EventListener
    void attach(VisitReported reported) {
        UUID entry = reported.report().value();
        jdbc.sql("""
                        select p.id, encode(p.sha256, 'hex') as sha256, p.kind, p.caption, p.taken_at, e.person_id as writer
                        from field_photos p join field_entries e on e.id = p.entry_id where p.entry_id = :id""")
                .param("id", entry)
                .query(Waiting.class)
                .list()
                .forEach(p -> attach(
                        p.id(),
                        entry,
                        p.sha256(),
                        p.kind(),
                        p.caption(),
                        p.takenAt() == null ? null : p.takenAt().toInstant(),
                        p.writer()));
    }
}
