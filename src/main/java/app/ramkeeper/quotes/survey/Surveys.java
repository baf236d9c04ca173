package app.ramkeeper.quotes.survey;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.files.Photos;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Keeps surveys as they are typed. */
@Service
@Transactional
@ForField
public class Surveys {

    private static final TypeReference<LinkedHashMap<String, String>> TYPED = new TypeReference<>() {};
    private static final String ROW =
            "select id, enquiry_id, surveyed_on, state, draft::text as draft, version from surveys ";

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    Surveys(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    /**
     * One survey.
     *
     * @throws Missing if there is none
     */
    @Transactional(readOnly = true)
    public SurveyRow row(UUID id) {
        return jdbc.sql(ROW + "where id = :id")
                .param("id", id)
                .query(this::read)
                .optional()
                .orElseThrow(() -> new Missing("survey", id));
    }

    /** What a survey tells of its place; nothing if there is no such survey. */
    @Transactional(readOnly = true)
    public Optional<SurveyedPlace> place(SurveyId id) {
        return jdbc.sql(ROW + "where id = :id")
                .param("id", id.value())
                .query(this::read)
                .optional()
                .map(SurveyedPlace::of);
    }

    @Transactional(readOnly = true)
    List<SurveyRow> of(UUID enquiry) {
        return jdbc.sql(ROW + "where enquiry_id = :enquiry order by id")
                .param("enquiry", enquiry)
                .query(this::read)
                .list();
    }

    private SurveyRow read(ResultSet row, int number) throws SQLException {
        return new SurveyRow(
                row.getObject("id", UUID.class),
                row.getObject("enquiry_id", UUID.class),
                row.getObject("surveyed_on", LocalDate.class),
                row.getString("state").equals("DONE"),
                json.readValue(row.getString("draft"), TYPED),
                row.getInt("version"));
    }

    /** A new survey; it starts from what is typed already, if anything is. */
    SurveyId start(UUID enquiry, Map<String, String> typed) {
        SurveyId id = SurveyId.next();
        jdbc.sql("insert into surveys (id, enquiry_id, surveyed_on, draft) values (:id, :enquiry, :on, :draft::jsonb)")
                .param("id", id.value())
                .param("enquiry", enquiry)
                .param("on", LocalDate.now(clock))
                .param("draft", json.writeValueAsString(typed))
                .update();
        return id;
    }

    /** Keeps what is typed so far; false if somebody else saved meanwhile or a design was chosen on it. */
    public boolean keep(UUID id, int version, @Nullable LocalDate on, Map<String, String> typed) {
        return jdbc.sql("""
                                update surveys set draft = :draft::jsonb, surveyed_on = :on, version = version + 1
                                where id = :id and version = :version and state = 'DRAFT'""")
                        .param("draft", json.writeValueAsString(typed))
                        .param("on", on)
                        .param("id", id)
                        .param("version", version)
                        .update()
                == 1;
    }

    /** Closes a survey: a design was chosen on it. */
    @ForOffice
    public void done(SurveyId id) {
        jdbc.sql("update surveys set state = 'DONE', version = version + 1 where id = :id and state = 'DRAFT'")
                .param("id", id.value())
                .update();
    }

    void add(UUID survey, Photos.Kept photo) {
        jdbc.sql("""
                        insert into survey_photos (id, survey_id, sha256, taken_at) values (:id, :survey, :key, :at)
                        on conflict (survey_id, sha256) do nothing""")
                .param("id", Uuids.next())
                .param("survey", survey)
                .param("key", HexFormat.of().parseHex(photo.sha256()))
                .param("at", photo.takenAt() == null ? null : Timestamp.from(photo.takenAt()))
                .update();
    }

    @Transactional(readOnly = true)
    List<UUID> photos(UUID survey) {
        return jdbc.sql("select id from survey_photos where survey_id = :survey order by id limit 100")
                .param("survey", survey)
                .query(UUID.class)
                .list();
    }

    @Transactional(readOnly = true)
    Optional<Photos.Shown> photo(UUID id) {
        return jdbc.sql(
                        "select f.media_type, f.content from survey_photos p join files f on f.sha256 = p.sha256 where p.id = :id")
                .param("id", id)
                .query((row, n) -> new Photos.Shown(row.getString(1), row.getBytes(2)))
                .optional();
    }
}
