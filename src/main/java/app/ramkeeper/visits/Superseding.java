package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reports that others take out of force. */
@Repository
class Superseding {

    private final JdbcClient jdbc;
    private final Clock clock;

    Superseding(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A report that is to be superseded. */
    record Old(
            ReportId id,
            SiteId site,
            @Nullable VisitId visit,
            VisitKind kind,
            LocalDate attendedOn,
            RecordVisit.@Nullable Commissioned commissioned,
            boolean superseded) {}

    /** The report, its row held: of two corrections of one report the second waits, then finds it superseded. */
    Optional<Old> hold(ReportId id) {
        jdbc.sql("select 1 from visit_reports where id = :id for update")
                .param("id", id.value())
                .query(Integer.class)
                .optional();
        return jdbc.sql("""
                        select r.*, (r.outcome = 'WITHDRAWN' or exists (select 1 from visit_reports s where s.supersedes = r.id)) as superseded
                        from visit_reports r where r.id = :id""").param("id", id.value()).query((row, n) -> old(row)).optional();
    }

    /** Writes the row that takes a report out of force and says nothing in its place. */
    void withdraw(Old old, String why, PersonId by) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into visit_reports (id, visit_id, site_id, kind, supersedes, attended_on, recorded_at, recorded_by,
                          outcome, note, content_hash, source)
                        values (:id, :visit, :site, :kind, :old, :on, :now, :by, 'WITHDRAWN', :why, :hash, 'IMPORT')""")
                .param("id", id)
                .param("visit", old.visit() == null ? null : old.visit().value())
                .param("site", old.site().value())
                .param("kind", old.kind().name())
                .param("old", old.id().value())
                .param("on", old.attendedOn())
                .param("now", ReportStore.at(clock.instant()))
                .param("by", by.value())
                .param("why", why)
                .param("hash", ContentHash.sha256(("withdrawn " + id).getBytes(StandardCharsets.UTF_8)))
                .update();
    }

    private static Old old(ResultSet row) throws SQLException {
        UUID visit = row.getObject("visit_id", UUID.class);
        return new Old(
                new ReportId(row.getObject("id", UUID.class)),
                new SiteId(row.getObject("site_id", UUID.class)),
                visit == null ? null : new VisitId(visit),
                VisitKind.valueOf(row.getString("kind")),
                row.getObject("attended_on", LocalDate.class),
                commissioned(row),
                row.getBoolean("superseded"));
    }

    private static RecordVisit.@Nullable Commissioned commissioned(ResultSet row) throws SQLException {
        UUID install = row.getObject("commissioned_install_id", UUID.class);
        String setting = row.getString("valve_setting");
        return install == null && setting == null
                ? null
                : new RecordVisit.Commissioned(install == null ? null : new InstallId(install), setting, null);
    }
}
