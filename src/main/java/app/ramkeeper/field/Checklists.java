package app.ramkeeper.field;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.ReportRefused.Problem;
import app.ramkeeper.visits.VisitKind;
import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/** Guided lists by pump model. A changed list is a new edition; a visit keeps the edition it was done with. */
@Service
@Transactional
public class Checklists {

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    Checklists(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = PhoneVisits.reader(json);
        this.clock = clock;
    }

    /**
     * One step.
     *
     * @param hold must be ticked or explained
     * @param caution the danger that is real at this step
     * @param steps valve settings are tried here
     */
    @JsonIgnoreProperties(ignoreUnknown = true)
    @JsonInclude(JsonInclude.Include.NON_DEFAULT)
    public record Item(
            String code,
            String text,
            boolean hold,
            @Nullable String caution,
            boolean steps) {}

    /** A list in one edition; without a model it is for all that have none of their own. */
    public record Edition(
            UUID id, @Nullable UUID model, @Nullable String modelName, int number, List<Item> items) {}

    private static final String SELECT = """
            select c.id, c.model_id, m.name, c.edition, c.items::text as items from field_checklists c left join pump_models m on m.id = c.model_id
            """;

    @ForField
    @Transactional(readOnly = true)
    public Optional<Edition> edition(UUID id) {
        return jdbc.sql(SELECT + "where c.id = :id")
                .param("id", id)
                .query((row, n) -> edition(row))
                .optional();
    }

    /** The editions in force. */
    @ForSetup
    @Transactional(readOnly = true)
    public List<Edition> inForce() {
        return jdbc.sql(
                        SELECT
                                + "where c.edition = (select max(o.edition) from field_checklists o where o.model_id is not distinct from c.model_id) order by m.name nulls first")
                .query((row, n) -> edition(row))
                .list();
    }

    private Edition edition(java.sql.ResultSet row) throws java.sql.SQLException {
        return new Edition(
                row.getObject("id", UUID.class),
                row.getObject("model_id", UUID.class),
                row.getString("name"),
                row.getInt("edition"),
                List.of(json.readValue(row.getString("items"), Item[].class)));
    }

    /** Writes the next edition of a model's list. */
    @ForSetup
    public void write(@Nullable UUID model, List<Item> items, PersonId by) {
        jdbc.sql("""
                        insert into field_checklists (id, kind, model_id, edition, items, created_at, created_by)
                        select :id, 'COMMISSIONING', cast(:model as uuid), coalesce(max(edition), 0) + 1, cast(:items as jsonb), :now, :by
                        from field_checklists where model_id is not distinct from cast(:model as uuid)""")
                .param("id", Uuids.next())
                .param("model", model)
                .param("items", json.writeValueAsString(items))
                .param("now", Timestamp.from(clock.instant()))
                .param("by", by.value())
                .update();
    }

    /** @throws ReportRefused if a hold point of a finished commissioning is neither ticked nor explained */
    @ForField
    @Transactional(readOnly = true)
    public void requireHoldPoints(PhoneVisit visit) {
        UUID list = visit.checklist();
        if (visit.kind() != VisitKind.COMMISSIONING || visit.outcome() != ReportOutcome.DONE || list == null) {
            return;
        }
        Map<String, PhoneVisit.CheckItem> answers = answers(visit);
        List<Problem> open = edition(list).map(Edition::items).orElse(List.of()).stream()
                .filter(Item::hold)
                .filter(item -> !settled(answers.get(item.code())))
                .map(item -> new Problem("checks." + item.code(), "Tick or explain: " + item.text() + "."))
                .toList();
        if (!open.isEmpty()) {
            throw new ReportRefused(open);
        }
    }

    static Map<String, PhoneVisit.CheckItem> answers(PhoneVisit visit) {
        List<PhoneVisit.CheckItem> checks = visit.checks();
        return checks == null
                ? Map.of()
                : checks.stream()
                        .collect(Collectors.toMap(PhoneVisit.CheckItem::code, Function.identity(), (a, b) -> b));
    }

    private static boolean settled(PhoneVisit.@Nullable CheckItem answer) {
        return answer != null
                && (answer.done() || (answer.why() != null && !answer.why().isBlank()));
    }
}
