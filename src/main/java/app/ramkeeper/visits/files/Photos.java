package app.ramkeeper.visits.files;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes photos in and gives them out. */
@Service
@ForField
@Transactional
@EnableConfigurationProperties(PhotoSettings.class)
public class Photos {

    private static final Logger LOG = LoggerFactory.getLogger(Photos.class);

    /** Pictures unpacked at the same time: each may take some 50 MB for a moment. */
    private static final Semaphore UNPACKING = new Semaphore(2);

    private final JdbcClient jdbc;
    private final PhotoSettings settings;
    private final Clock clock;

    Photos(JdbcClient jdbc, PhotoSettings settings, Clock clock) {
        this.jdbc = jdbc;
        this.settings = settings;
        this.clock = clock;
    }

    /** A photo that is kept, named by the SHA-256 of its content in hexadecimal. */
    public record Kept(String sha256, @Nullable Instant takenAt) {}

    /** A photo to show. */
    public record Shown(String mediaType, byte[] content) {}

    /**
     * Keeps a photo for a report that is still being written.
     *
     * @param fileName as sent; only its ending is looked at, it is never stored
     * @throws PhotoRefused if it is too large, no picture, the person has brought too many, or there is no room
     */
    public Kept keep(byte[] content, @Nullable String fileName, @Nullable String declaredType, PersonId by) {
        if (content.length > settings.maxSize().toBytes()) {
            throw new PhotoRefused(
                    HttpStatus.CONTENT_TOO_LARGE,
                    "A photo may have at most " + settings.maxSize().toMegabytes() + " MB.");
        }
        PhotoKind kind = PhotoKind.of(fileName, declaredType, content);
        requireQuota(by, content.length);
        Picture notes = Picture.read(content, clock.getZone());
        Redrawing.Made made = redraw(content, kind, notes.orientation());
        byte[] key = sha256(made.content());
        try {
            store(key, made, by);
        } catch (DataAccessResourceFailureException full) {
            LOG.error("A photo could not be stored", full);
            throw new PhotoRefused(
                    HttpStatus.SERVICE_UNAVAILABLE,
                    "There is no room for this photo on the server just now. Save without it and bring it later.");
        }
        return new Kept(HexFormat.of().formatHex(key), notes.takenAt());
    }

    /**
     * Adds a kept photo to a report that was recorded before the photo came.
     *
     * @param photo made by who took it: the same one is added once
     * @return false if the report is not in the history
     */
    public boolean attach(UUID photo, UUID report, String sha256, @Nullable String caption, @Nullable Instant takenAt) {
        int reports = jdbc.sql("select count(*) from visit_reports where id = :report")
                .param("report", report)
                .query(Integer.class)
                .single();
        if (reports == 1) {
            jdbc.sql("""
                            insert into photos (id, report_id, sha256, caption, taken_at) values (:id, :report, :key, :caption, :taken)
                            on conflict (id) do nothing""")
                    .param("id", photo)
                    .param("report", report)
                    .param("key", HexFormat.of().parseHex(sha256))
                    .param("caption", caption)
                    .param("taken", takenAt == null ? null : Timestamp.from(takenAt))
                    .update();
        }
        return reports == 1;
    }

    /** A photo of a recorded report; everybody of the field and the office may see it. */
    @Transactional(readOnly = true)
    public Optional<Shown> ofReport(UUID photo) {
        return jdbc.sql(
                        "select f.media_type, f.content from photos p join files f on f.sha256 = p.sha256 where p.id = :id")
                .param("id", photo)
                .query((row, n) -> new Shown(row.getString(1), row.getBytes(2)))
                .optional();
    }

    /** The key of the file of a report's photo. */
    @Transactional(readOnly = true)
    public Optional<String> keyOf(UUID photo) {
        return jdbc.sql("select encode(sha256, 'hex') from photos where id = :id")
                .param("id", photo)
                .query(String.class)
                .optional();
    }

    /** A photo named in a form: one that a report holds, or one that no report uses yet, for who brought it only. */
    @Transactional(readOnly = true)
    public Optional<Shown> upload(String sha256, PersonId by) {
        if (!sha256.matches("[0-9a-f]{64}")) {
            return Optional.empty();
        }
        return jdbc.sql("""
                        select f.media_type, f.content from files f where f.sha256 = :key
                          and (exists (select 1 from file_uploads u where u.sha256 = f.sha256 and u.person_id = :by)
                            or exists (select 1 from photos p where p.sha256 = f.sha256))""")
                .param("key", HexFormat.of().parseHex(sha256))
                .param("by", by.value())
                .query((row, n) -> new Shown(row.getString(1), row.getBytes(2)))
                .optional();
    }

    private void requireQuota(PersonId by, int size) {
        record Brought(long count, long bytes) {}
        // The person's row is held, so that parallel requests count one after the other.
        jdbc.sql("select 1 from people where id = :by for no key update")
                .param("by", by.value())
                .query(Integer.class)
                .optional();
        Brought brought = jdbc.sql(
                        "select count(*), coalesce(sum(size), 0) from file_uploads where person_id = :by and at > :since")
                .param("by", by.value())
                .param("since", Timestamp.from(clock.instant().minus(Duration.ofDays(1))))
                .query((row, n) -> new Brought(row.getLong(1), row.getLong(2)))
                .single();
        if (brought.count() >= settings.perDay()
                || brought.bytes() + size > settings.bytesPerDay().toBytes()) {
            throw new PhotoRefused(
                    HttpStatus.TOO_MANY_REQUESTS,
                    "You have brought as many photos as fit into a day (%d, or %d MB). Send the rest tomorrow."
                            .formatted(settings.perDay(), settings.bytesPerDay().toMegabytes()));
        }
    }

    private Redrawing.Made redraw(byte[] content, PhotoKind kind, int orientation) {
        UNPACKING.acquireUninterruptibly();
        try {
            return Redrawing.of(content, kind, orientation, settings);
        } finally {
            UNPACKING.release();
        }
    }

    /** A kept picture drawn anew, its longest side at most as given; a small one stays as it is. */
    Shown smaller(Shown file, int side) {
        UNPACKING.acquireUninterruptibly();
        try {
            Redrawing.Made made = Redrawing.smaller(file.content(), PhotoKind.ofType(file.mediaType()), side);
            return made.content().length < file.content().length ? new Shown(made.mediaType(), made.content()) : file;
        } finally {
            UNPACKING.release();
        }
    }

    private void store(byte[] key, Redrawing.Made made, PersonId by) {
        Timestamp now = Timestamp.from(clock.instant());
        jdbc.sql("""
                        insert into files (sha256, media_type, size, content, created_at) values (:key, :type, :size, :content, :now)
                        on conflict (sha256) do nothing""")
                .param("key", key)
                .param("type", made.mediaType())
                .param("size", made.content().length)
                .param("content", made.content())
                .param("now", now)
                .update();
        jdbc.sql("insert into file_uploads (id, sha256, person_id, size, at) values (:id, :key, :by, :size, :now)")
                .param("id", Uuids.next())
                .param("key", key)
                .param("by", by.value())
                .param("size", made.content().length)
                .param("now", now)
                .update();
    }

    private static byte[] sha256(byte[] content) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(content);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}
