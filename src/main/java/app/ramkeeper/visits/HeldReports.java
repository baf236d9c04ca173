package app.ramkeeper.visits;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.time.Clock;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Keeps reports that could not be applied, word for word. */
@Repository
class HeldReports {

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    HeldReports(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    /** Puts a report on the list; false if one with its id is there. */
    boolean keep(RecordVisit command, byte[] hash, HeldBecause because, PersonId by) {
        return jdbc.sql("""
                        insert into to_settle (id, report_id, visit_id, site_id, content_hash, payload, reason, received_at, received_by)
                        values (:id, :report, (select id from visits where id = :visit), (select id from sites where id = :site), :hash, cast(:payload as jsonb),
                          :reason, :now, :by)
                        on conflict (report_id) do nothing""")
                        .param("id", Uuids.next())
                        .param("report", command.id().value())
                        .param(
                                "visit",
                                command.visit() == null ? null : command.visit().value())
                        .param("site", command.site().value())
                        .param("hash", hash)
                        .param("payload", json.writeValueAsString(command))
                        .param("reason", because.name())
                        .param("now", ReportStore.at(clock.instant()))
                        .param("by", by.value())
                        .update()
                == 1;
    }

    RecordVisit read(String payload) {
        return json.readValue(payload, RecordVisit.class);
    }
}
