package app.ramkeeper.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.shared.Uuids;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** What the triggers write, seen through a table that has one secret-free twin: depots. */
@SpringBootTest
@Import(TestDatabase.class)
class AuditTrailTests {

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Test
    void keepsOldAndNewOfWhatChangedAndWhoDidIt() {
        UUID depot = Uuids.next();
        as("office", () -> insert(depot, "Depot " + depot));
        as(
                "manager",
                () -> jdbc.sql("update depots set address = 'Ridge Road', version = 1 where id = ?")
                        .param(depot)
                        .update());

        List<Map<String, Object>> entries = entriesOf(depot);

        assertThat(entries).hasSize(2);
        assertThat(entries.get(0)).containsEntry("actor", "office").containsEntry("operation", "insert");
        assertThat(entries.get(1))
                .containsEntry("actor", "manager")
                .containsEntry("source", "a test")
                .containsEntry("old_values", "{\"address\": null}")
                .containsEntry("new_values", "{\"address\": \"Ridge Road\"}");
    }

    @Test
    void goesWhenTheChangeIsRolledBack() {
        UUID depot = Uuids.next();

        assertThatThrownBy(() -> as("office", () -> {
                    insert(depot, "Depot " + depot);
                    throw new IllegalStateException("last step fails");
                }))
                .hasMessage("last step fails");

        assertThat(entriesOf(depot)).isEmpty();
    }

    @Test
    void neverForgetsOrChangesAnEntry() throws SQLException {
        assertThatThrownBy(() ->
                        jdbc.sql("update audit_entries set actor = 'nobody'").update())
                .hasMessageContaining("audit_entries")
                .hasStackTraceContaining("permission denied");

        JdbcConnectionDetails owner = TestDatabase.owner();
        try (Connection connection =
                DriverManager.getConnection(owner.getJdbcUrl(), owner.getUsername(), owner.getPassword())) {
            assertThatThrownBy(() -> connection.createStatement().execute("truncate audit_entries"))
                    .hasMessageContaining("never changed");
        }
    }

    @Test
    void hidesSecrets() {
        UUID person = Uuids.next();
        UUID account = Uuids.next();
        as("administrator", () -> {
            jdbc.sql("insert into people (id, name) values (?, 'Somebody')")
                    .param(person)
                    .update();
            jdbc.sql("insert into accounts (id, person_id, login, password_hash) values (?, ?, ?, 'hash-one')")
                    .params(account, person, "login-" + account)
                    .update();
            return jdbc.sql("update accounts set password_hash = 'hash-two' where id = ?")
                    .param(account)
                    .update();
        });

        assertThat(entriesOf(account).toString())
                .doesNotContain("hash-one", "hash-two")
                .contains("(secret, new)");
    }

    private int insert(UUID depot, String name) {
        return jdbc.sql("insert into depots (id, name) values (?, ?)")
                .params(depot, name)
                .update();
    }

    private <T> void as(String name, java.util.function.Supplier<T> work) {
        Actor.as(new Actor(name, "a test"), () -> transaction.execute(status -> work.get()));
    }

    private List<Map<String, Object>> entriesOf(UUID row) {
        return jdbc.sql("""
                        select actor, source, operation, old_values::text, new_values::text from audit_entries
                        where row_id = ? order by id""").param(row.toString()).query().listOfRows();
    }
}
