package app.ramkeeper;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Migrates a database from empty and starts the application on it; Hibernate compares its entities with the tables. */
@SpringBootTest
@Import(TestDatabase.class)
class MigrationTests {

    @Autowired
    JdbcClient jdbc;

    @Test
    void migratesAndMatchesTheEntities() {
        assertThat(jdbc.sql("select count(*) from flyway_schema_history where not success")
                        .query(Long.class)
                        .single())
                .isZero();
    }
}
