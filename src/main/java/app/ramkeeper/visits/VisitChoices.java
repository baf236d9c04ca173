package app.ramkeeper.visits;

import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.web.Choice;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The drop-downs of the pages about visits, calls and stock. */
@Component("visitChoices")
public class VisitChoices {

    private final JdbcClient jdbc;
    private final MessageSource messages;

    VisitChoices(JdbcClient jdbc, MessageSource messages) {
        this.jdbc = jdbc;
        this.messages = messages;
    }

    /** The constants of an enum with their words, {@code visits.<group>.<NAME>}. */
    public List<Choice> of(String group, Enum<?>... constants) {
        return Stream.of(constants)
                .map(constant -> new Choice(constant.name(), word(group, constant)))
                .toList();
    }

    /** The word for a constant. */
    public String word(String group, @Nullable Enum<?> constant) {
        return constant == null ? "–" : messages.getMessage("visits." + group + "." + constant.name(), null, Locale.UK);
    }

    /** What a key of the bundle says. */
    public String said(String key) {
        return messages.getMessage(key, null, Locale.UK);
    }

    public List<Choice> kinds() {
        return of("kind", VisitKind.values());
    }

    public List<Choice> symptoms() {
        return of("symptom", Symptom.values());
    }

    public List<Choice> reasons() {
        return of("reason", Reason.values());
    }

    /** How a visit can have gone. */
    public List<Choice> outcomes() {
        return of("outcome", ReportOutcome.DONE, ReportOutcome.PARTLY, ReportOutcome.COULD_NOT);
    }

    public List<Choice> states() {
        return of("state", VisitState.values());
    }

    public List<Choice> contacts() {
        return of("contact", ContactBy.values());
    }

    /** What a try to reach somebody can come to. */
    public List<Choice> answers() {
        return of("answer", Answer.TOLD, Answer.CONFIRMED, Answer.ASKED_TO_MOVE, Answer.NO_ANSWER);
    }

    public List<Choice> workOutcomes() {
        return of("work", WorkOutcome.values());
    }

    public List<Choice> doneBy() {
        return of("doneBy", DoneBy.values());
    }

    public List<Choice> positions() {
        return of("position", ComponentPosition.values());
    }

    /** What may be at the tank when nothing arrives. */
    public List<Choice> floats() {
        return List.of(new Choice("SHUT", said("visits.float.SHUT")), new Choice("OPEN", said("visits.float.OPEN")));
    }

    /** People who work here, by name. */
    public List<Choice> people() {
        return list("select id, name from people where left_on is null order by name, id");
    }

    public List<Choice> depots() {
        return list("select id, name from depots order by name");
    }

    public List<Choice> instruments() {
        return list("select id, name from instruments order by name");
    }

    public List<Choice> taskKinds() {
        return list("select id, name from task_kinds where withdrawn_on is null order by name");
    }

    public List<Choice> parts() {
        return list("select id, number || ' ' || name as name from parts where withdrawn_on is null order by number");
    }

    /** Parts with how many lie in a person's van, those on it first. */
    public List<Choice> partsOnVan(UUID person) {
        return jdbc.sql("""
                        select p.id, p.number || ' ' || p.name || coalesce(' (' || trim_scale(s.quantity) || ' on the van)', '') as name
                        from parts p left join (select l.part_id, sum(l.quantity) as quantity from stock_levels l
                            join stock_places v on v.id = l.place_id where v.person_id = :person and l.quantity > 0 group by l.part_id) s on s.part_id = p.id
                        where p.withdrawn_on is null order by (s.quantity is null), p.number""")
                .param("person", person)
                .query((row, n) -> new Choice(row.getString(1), row.getString(2)))
                .list();
    }

    public List<Choice> places() {
        return list("select id, name from stock_places order by kind, name");
    }

    private List<Choice> list(String sql) {
        return jdbc.sql(sql)
                .query((row, n) -> new Choice(row.getString("id"), row.getString("name")))
                .list();
    }
}
