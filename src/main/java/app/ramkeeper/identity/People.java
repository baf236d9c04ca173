package app.ramkeeper.identity;

import app.ramkeeper.web.Choice;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What other features ask about the company's people and depots. */
@Service
@Transactional(readOnly = true)
public class People {

    /** A person as lists and plans show them. */
    public record PersonCard(
            UUID id,
            String name,
            @Nullable String phone,
            @Nullable UUID depotId,
            @Nullable String depot,
            @Nullable String vehicle,
            @Nullable LocalDate leftOn) {

        public PersonId personId() {
            return new PersonId(id);
        }
    }

    /** Whom to ring when somebody is not back. */
    public record NextOfKin(@Nullable String name, @Nullable String phone) {}

    /** A place of the company's own, from which rounds start. */
    public record DepotCard(
            UUID id,
            String name,
            @Nullable Double latitude,
            @Nullable Double longitude,
            @Nullable Double altitudeM) {

        public DepotId depotId() {
            return new DepotId(id);
        }
    }

    /** Days on which a person is away. */
    public record Leave(UUID personId, LocalDate fromDate, LocalDate untilDate) {}

    private static final String PERSON = """
            select p.id, p.name, p.phone, p.depot_id, d.name as depot, p.vehicle, p.left_on
            from people p left join depots d on d.id = p.depot_id
            """;

    private final JdbcClient jdbc;

    People(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All who work here on a day, by name. */
    public List<PersonCard> activeOn(LocalDate day) {
        return jdbc.sql(PERSON + """
                where (p.left_on is null or p.left_on >= :day) and (p.started_on is null or p.started_on <= :day)
                order by folded(p.name), p.id""").param("day", day).query(PersonCard.class).list();
    }

    /** Those of them who go out: technicians by role, and people without an account whom not only an imported history names. */
    public List<PersonCard> fieldPeopleOn(LocalDate day) {
        return fieldPeopleOn(day, Set.of());
    }

    /** Those who go out on a day, and others by name of their ids, such as who has left since. */
    public List<PersonCard> fieldPeopleOn(LocalDate day, Set<UUID> also) {
        return jdbc.sql(PERSON + """
                left join accounts a on a.person_id = p.id
                where (p.left_on is null or p.left_on >= :day) and (p.started_on is null or p.started_on <= :day)
                  and (a.id is null and not p.of_history or exists (select 1 from account_roles r where r.account_id = a.id and r.role = 'TECHNICIAN'))
                  or p.id = any(:also)
                order by folded(p.name), p.id""")
                .param("day", day)
                .param("also", also.toArray(UUID[]::new))
                .query(PersonCard.class)
                .list();
    }

    /** A person by id, also one who has left. */
    public Optional<PersonCard> byId(PersonId person) {
        return jdbc.sql(PERSON + "where p.id = ?")
                .param(person.value())
                .query(PersonCard.class)
                .optional();
    }

    /** A person by name as an import spells it; empty if none or several match. */
    public Optional<PersonCard> byName(String name) {
        List<PersonCard> found = jdbc.sql(PERSON + "where folded(p.name) = folded(?) limit 2")
                .param(name.strip())
                .query(PersonCard.class)
                .list();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    /** Whom to ring for a person. */
    public Optional<NextOfKin> nextOfKin(PersonId person) {
        return jdbc.sql("select next_of_kin as name, next_of_kin_phone as phone from people where id = ?")
                .param(person.value())
                .query(NextOfKin.class)
                .optional();
    }

    /** The codes of what a person is trained for. */
    public List<String> skillsOf(PersonId person) {
        return jdbc.sql("select skill from person_skills where person_id = ? order by skill")
                .param(person.value())
                .query(String.class)
                .list();
    }

    /** All kinds of skill, for a drop-down. */
    public List<Choice> skills() {
        return jdbc.sql("select code as value, name as label from skills order by name")
                .query(Choice.class)
                .list();
    }

    /** Who is away on some day of a span. */
    public List<Leave> leaveBetween(LocalDate from, LocalDate until) {
        return jdbc.sql(
                        "select person_id, from_date, until_date from person_leave where from_date <= :until and until_date >= :from"
                                + " order by from_date, person_id")
                .param("from", from)
                .param("until", until)
                .query(Leave.class)
                .list();
    }

    /** All depots, by name. */
    public List<DepotCard> depots() {
        return jdbc.sql("select id, name, latitude, longitude, altitude_m from depots order by folded(name), id")
                .query(DepotCard.class)
                .list();
    }

    /** All depots, for a drop-down. */
    public List<Choice> depotChoices() {
        return depots().stream()
                .map(depot -> new Choice(depot.id().toString(), depot.name()))
                .toList();
    }

    /** People, for a drop-down. */
    public static List<Choice> choices(List<PersonCard> people) {
        return people.stream()
                .map(person -> new Choice(person.id().toString(), person.name()))
                .toList();
    }
}
