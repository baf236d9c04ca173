package app.ramkeeper.field;

import app.ramkeeper.visits.ReportId;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.json.JsonMapper;

/** Visits as phones wrote them. */
@Repository
class SentVisits {

    private final JdbcClient jdbc;
    private final JsonMapper json;

    SentVisits(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = PhoneVisits.reader(json);
    }

    /** What a phone sent as this report, settled or not, or as the one it corrects. */
    Optional<PhoneVisit> of(ReportId report) {
        return jdbc.sql("""
                        with recursive before as (
                          select cast(:id as uuid) as id, (select supersedes from visit_reports where id = :id) as supersedes, 1 as n
                          union all select r.id, r.supersedes, b.n + 1 from visit_reports r join before b on r.id = b.supersedes)
                        select f.text from before b join field_entries f on f.id = b.id order by b.n limit 1""")
                .param("id", report.value())
                .query(String.class)
                .optional()
                .map(text -> json.readValue(text, PhoneVisit.class));
    }
}
