package app.ramkeeper.identity.people;

import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The administrator's work on the company's people. */
@Service
@Transactional
@ForAdministrator
class PersonAdmin {

    /** A line of the list. */
    record Row(
            UUID id,
            String name,
            @Nullable String phone,
            @Nullable String depot,
            @Nullable LocalDate leftOn,
            boolean ofHistory,
            @Nullable String login,
            boolean disabled,
            @Nullable String roles) {}

    private final PersonRepository people;
    private final JdbcClient jdbc;

    PersonAdmin(PersonRepository people, JdbcClient jdbc) {
        this.people = people;
        this.jdbc = jdbc;
    }

    @Transactional(readOnly = true)
    List<Row> list() {
        return jdbc.sql("""
                        select p.id, p.name, p.phone, d.name as depot, p.left_on, p.of_history and a.id is null as of_history, a.login, a.disabled_at is not null as disabled,
                               (select string_agg(lower(r.role), ', ' order by r.role) from account_roles r where r.account_id = a.id) as roles
                        from people p left join depots d on d.id = p.depot_id left join accounts a on a.person_id = p.id
                        order by p.left_on is not null, folded(p.name), p.id limit 1000""").query(Row.class).list();
    }

    @Transactional(readOnly = true)
    PersonForm read(UUID id) {
        return find(id).form(skills(id));
    }

    PersonId add(PersonForm form) {
        PersonId id = PersonId.next();
        Person person = new Person(id.value(), form.name());
        person.change(form);
        people.save(person);
        write(id.value(), Set.of(), form.skills());
        return id;
    }

    void change(UUID id, PersonForm form) {
        Person person = find(id);
        if (form.version() == null || person.version() != form.version()) {
            throw new OptimisticLockingFailureException("The person was changed meanwhile");
        }
        person.change(form);
        people.save(person);
        write(id, skills(id), form.skills());
    }

    private Person find(UUID id) {
        return people.findById(id).orElseThrow(() -> new Missing("person", id));
    }

    private Set<String> skills(UUID person) {
        return jdbc.sql("select skill from person_skills where person_id = ?")
                .param(person)
                .query(String.class)
                .set();
    }

    private void write(UUID person, Set<String> before, Set<String> wanted) {
        Set<String> gone = new HashSet<>(before);
        gone.removeAll(wanted);
        gone.forEach(skill -> jdbc.sql("delete from person_skills where person_id = ? and skill = ?")
                .params(person, skill)
                .update());
        Set<String> fresh = new HashSet<>(wanted);
        fresh.removeAll(before);
        fresh.forEach(skill -> jdbc.sql(
                        "insert into person_skills (person_id, skill) select ?, code from skills where code = ?")
                .params(person, skill)
                .update());
    }
}
