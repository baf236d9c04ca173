package app.ramkeeper.visits;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.util.UUID;
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

    /** Gives them a depot of their own in the hills, where their rounds begin and end. */
    public void startTogether(PersonId... those) {
        UUID depot = Uuids.next();
        jdbc.sql("insert into depots (id, name, latitude, longitude) values (?, ?, -45.02, 168.70)")
                .params(depot, "Depot " + depot)
                .update();
        for (PersonId person : those) {
            jdbc.sql("update people set depot_id = ? where id = ?")
                    .params(depot, person.value())
                    .update();
        }
    }
}
