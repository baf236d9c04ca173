package app.ramkeeper.field;

import app.ramkeeper.field.ExpectedTable.Setup;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.sizing.ram.CatalogueTable;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.web.Choice;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/**
 * All that a phone takes along: every site of the firm as text, what is due there, what was read last and what the library
 * expects, the person's own visits of the next days, which photos go along for these and for pinned sites, and the lists the pages choose from. No prices, no private notes.
 */
@Service
@ForField
@Transactional(readOnly = true)
class Bundle {

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final VisitChoices choices;
    private final Clock clock;

    Bundle(JdbcClient jdbc, JsonMapper json, VisitChoices choices, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.choices = choices;
        this.clock = clock;
    }

    /** As JSON; the same text as long as nothing changed. */
    String of(PersonId person) {
        LocalDate today = LocalDate.now(clock);
        Map<String, String> parts = new LinkedHashMap<>();
        BundleSql.SECTIONS.forEach((name, sql) -> parts.put(
                name,
                jdbc.sql("select coalesce(json_agg(x), '[]')::text from (" + sql + ") x")
                        .params(BundleSql.whose(person.value(), today))
                        .query(String.class)
                        .single()));
        parts.put("expected", json.writeValueAsString(expected()));
        parts.put("words", json.writeValueAsString(words()));
        StringBuilder text = new StringBuilder("{\"v\":1,\"today\":\"" + today + "\"");
        parts.forEach(
                (name, part) -> text.append(",\"").append(name).append("\":").append(part));
        return text.append('}').toString();
    }

    private Map<String, List<Choice>> words() {
        Map<String, List<Choice>> words = new LinkedHashMap<>();
        words.put("kind", choices.kinds());
        words.put("symptom", choices.symptoms());
        words.put("reason", choices.reasons());
        words.put("workOutcome", choices.workOutcomes());
        words.put("position", choices.positions());
        return words;
    }

    private record Known(
            UUID id,
            @Nullable UUID model,
            double fall,
            double lift,
            double drive,
            @Nullable Double bore,
            @Nullable Double length,
            @Nullable Double altitude) {}

    private Map<UUID, List<List<Double>>> expected() {
        Map<UUID, List<CatalogueTable.Entry>> models = models();
        Map<UUID, List<List<Double>>> tables = new LinkedHashMap<>();
        Map<Setup, List<List<Double>>> done = new HashMap<>();
        for (Known k : jdbc.sql(BundleSql.SET_UPS)
                .param("today", LocalDate.now(clock))
                .query(Known.class)
                .list()) {
            List<CatalogueTable.Entry> model =
                    k.model() == null ? List.of() : models.getOrDefault(k.model(), List.of());
            Setup setup = new Setup(k.fall(), k.lift(), k.drive(), k.bore(), k.length(), k.altitude(), model);
            List<List<Double>> rows = done.computeIfAbsent(
                    setup,
                    s -> ExpectedTable.of(s).stream()
                            .map(r -> List.of(r.drive(), r.delivered(), r.u(), r.runningPa()))
                            .toList());
            if (!rows.isEmpty()) {
                tables.put(k.id(), rows);
            }
        }
        return tables;
    }

    private Map<UUID, List<CatalogueTable.Entry>> models() {
        Map<UUID, List<CatalogueTable.Entry>> models = new HashMap<>();
        jdbc.sql("select model_id, fall_m, lift_m, drive_flow_l_min, delivered_l_min from pump_model_performance")
                .query(row -> {
                    models.computeIfAbsent(row.getObject(1, UUID.class), id -> new ArrayList<>())
                            .add(new CatalogueTable.Entry(
                                    row.getDouble(2), row.getDouble(3), row.getDouble(4), row.getDouble(5)));
                });
        return models;
    }
}
