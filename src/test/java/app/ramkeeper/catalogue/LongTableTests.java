package app.ramkeeper.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.WebVisitor;
import app.ramkeeper.identity.people.Accounts;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A model with a table as long as those of catalogues, over http: servers and binding limit how many fields they take. */
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT, properties = "ramkeeper.second-factor=off")
@Import(TestDatabase.class)
class LongTableTests {

    private static final int POINTS = 400;

    @LocalServerPort
    int port;

    @Autowired
    Accounts accounts;

    @Autowired
    JdbcClient jdbc;

    @Test
    void savesEveryPoint() {
        String tag = UUID.randomUUID().toString().substring(24);
        String password = "a weir in the morning mist";
        accounts.create(new Accounts.NewAccount(
                accounts.addPerson("Person " + tag), "admin-" + tag, password, Set.of(Role.ADMINISTRATOR)));
        WebVisitor administrator = new WebVisitor(port);
        administrator.signIn("admin-" + tag, password);
        List<String> fields = new ArrayList<>(
                List.of("name", "Long " + tag, "vesselKind", "BLADDER", "deliveryValves", "1", "wasteValves", "1"));
        for (int i = 0; i < POINTS; i++) {
            String row = "performance[" + i + "].";
            fields.addAll(List.of(row + "fallM", "" + (1 + i % 20), row + "liftM", "" + (40 + i / 20)));
            fields.addAll(List.of(row + "driveFlowLMin", "60", row + "deliveredLMin", "0.5"));
        }

        var saved = administrator.submit("/pump-models/new", "/pump-models/new", fields.toArray(String[]::new));

        assertThat(saved.statusCode()).isEqualTo(302);
        assertThat(jdbc.sql(
                                "select count(*) from pump_model_performance p join pump_models m on m.id = p.model_id where m.name = ?")
                        .param("Long " + tag)
                        .query(Integer.class)
                        .single())
                .isEqualTo(POINTS);
        assertThat(administrator
                        .submit(
                                "/pump-models/new",
                                "/pump-models/new",
                                "name",
                                "Far " + tag,
                                "performance[99999].fallM",
                                "1")
                        .statusCode())
                .as("a row that no page has")
                .isEqualTo(400);
    }
}
