package app.ramkeeper.visits;

import app.ramkeeper.identity.PersonId;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Makes people of the company for tests. */
@TestComponent
public class FieldPeople {

    private final JdbcClient jdbc;

    FieldPeople(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public PersonId named(String name) {
        PersonId id = PersonId.next();
        jdbc.sql("insert into people (id, name) values (:id, :name)")
                .param("id", id.value())
                .param("name", name)
                .update();
        return id;
    }
}
