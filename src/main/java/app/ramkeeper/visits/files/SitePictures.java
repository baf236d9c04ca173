package app.ramkeeper.visits.files;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Pictures that show a site itself: its gate, drawings of the works. Whoever goes there takes them along. */
@Service
@ForField
@Transactional
public class SitePictures {

    static final int MOST = 30;

    private final JdbcClient jdbc;
    private final Clock clock;

    SitePictures(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** One picture in a list. */
    public record Row(UUID id, PictureKind kind, @Nullable String caption, Instant addedAt, String addedBy) {}

    /** The gate first, then the newest. */
    @Transactional(readOnly = true)
    public List<Row> of(SiteId site) {
        return jdbc.sql("""
                        select p.id, p.kind, p.caption, p.added_at, w.name as added_by from site_pictures p join people w on w.id = p.added_by
                        where p.site_id = :site order by p.kind <> 'GATE', p.added_at desc, p.id""").param("site", site.value()).query(Row.class).list();
    }

    /**
     * Adds a kept photo; the same one is added once.
     *
     * @throws PhotoRefused if the site has as many as it may
     */
    public void add(UUID id, SiteId site, PictureKind kind, Photos.Kept photo, @Nullable String caption, PersonId by) {
        jdbc.sql("select 1 from sites where id = :site for no key update")
                .param("site", site.value())
                .query(Integer.class)
                .optional();
        if (of(site).size() >= MOST) {
            throw new PhotoRefused(
                    HttpStatus.UNPROCESSABLE_CONTENT,
                    "This site has " + MOST + " pictures, the most it may have. Take one away first.");
        }
        addAnyhow(id, site.value(), kind, photo.sha256(), caption, by.value());
    }

    /** Adds a gate that was photographed during a visit; a site that has all its pictures keeps those. */
    public void addGate(UUID id, UUID report, String sha256, @Nullable String caption, UUID by) {
        jdbc.sql("""
                        select r.site_id from visit_reports r
                        where r.id = :report and (select count(*) from site_pictures p where p.site_id = r.site_id) < :most""")
                .param("report", report)
                .param("most", MOST)
                .query(UUID.class)
                .optional()
                .ifPresent(site -> addAnyhow(id, site, PictureKind.GATE, sha256, caption, by));
    }

    private void addAnyhow(UUID id, UUID site, PictureKind kind, String sha256, @Nullable String caption, UUID by) {
        jdbc.sql("""
                        insert into site_pictures (id, site_id, kind, sha256, caption, added_at, added_by)
                        values (:id, :site, :kind, :key, nullif(:caption, ''), :now, :by) on conflict do nothing""")
                .param("id", id)
                .param("site", site)
                .param("kind", kind.name())
                .param("key", HexFormat.of().parseHex(sha256))
                .param("caption", caption)
                .param("now", Timestamp.from(clock.instant()))
                .param("by", by)
                .update();
    }

    /**
     * Takes one away; its photo stays with the report it came with.
     *
     * @return its site
     */
    public SiteId remove(UUID id) {
        return jdbc.sql("delete from site_pictures where id = :id returning site_id")
                .param("id", id)
                .query(UUID.class)
                .optional()
                .map(SiteId::new)
                .orElseThrow(() -> new Missing("picture", id));
    }

    /** The picture as it is kept. */
    @Transactional(readOnly = true)
    public Optional<Photos.Shown> shown(UUID id) {
        return jdbc.sql(
                        "select f.media_type, f.content from site_pictures p join files f on f.sha256 = p.sha256 where p.id = :id")
                .param("id", id)
                .query((row, n) -> new Photos.Shown(row.getString(1), row.getBytes(2)))
                .optional();
    }
}
