package app.ramkeeper.quotes.design;

import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.quotes.survey.Surveys;
import app.ramkeeper.shared.Missing;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.json.JsonMapper;

/** Keeps chosen designs whole. */
@Service
@Transactional
@ForOffice
class DesignStore implements ChosenDesigns {

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Surveys surveys;
    private final Clock clock;

    DesignStore(JdbcClient jdbc, JsonMapper json, Surveys surveys, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.surveys = surveys;
        this.clock = clock;
    }

    /** A chosen design with what its page draws beside it. */
    record Kept(ChosenDesign design, Curves curves, LocalDate chosenOn, String chosenBy) {}

    @Override
    @ForAll
    @Transactional(readOnly = true)
    public ChosenDesign find(DesignId id) {
        return kept(id.value()).design();
    }

    @ForAll
    @Transactional(readOnly = true)
    public Kept kept(UUID id) {
        return jdbc.sql("""
                        select d.design::text as design, d.curves::text as curves, d.chosen_on, p.name
                        from design_choices d join people p on p.id = d.chosen_by where d.id = :id""")
                .param("id", id)
                .query((row, n) -> new Kept(
                        json.readValue(row.getString("design"), ChosenDesign.class),
                        json.readValue(row.getString("curves"), Curves.class),
                        row.getObject("chosen_on", LocalDate.class),
                        row.getString("name")))
                .optional()
                .orElseThrow(() -> new Missing("design", id));
    }

    /** Keeps the choice and closes the survey it rests on. */
    public void keep(ChosenDesign design, Curves curves, PersonId by) {
        jdbc.sql("""
                        insert into design_choices (id, survey_id, chosen_on, chosen_by, design, curves, p10_l_day, p50_l_day, p90_l_day, demand_l_day)
                        values (:id, :survey, :on, :by, :design::jsonb, :curves::jsonb, :p10, :p50, :p90, :demand)""")
                .param("id", design.id().value())
                .param("survey", design.survey().value())
                .param("on", LocalDate.now(clock))
                .param("by", by.value())
                .param("design", json.writeValueAsString(design))
                .param("curves", json.writeValueAsString(curves))
                .param("p10", design.perDay().p10())
                .param("p50", design.perDay().p50())
                .param("p90", design.perDay().p90())
                .param("demand", design.demandLDay())
                .update();
        surveys.done(design.survey());
    }
}
