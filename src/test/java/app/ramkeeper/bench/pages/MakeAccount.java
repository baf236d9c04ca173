package app.ramkeeper.bench.pages;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;

/** Writes one account for each role into the filled database; the password is the environment's {@code BENCH_PASSWORD}. */
public final class MakeAccount {

    private MakeAccount() {}

    /** Argument: the database's address with user. */
    public static void main(String[] arguments) throws SQLException {
        String hash = "{argon2id}"
                + new Argon2PasswordEncoder(16, 32, 1, 19456, 2)
                        .encode(Objects.requireNonNull(System.getenv("BENCH_PASSWORD")));
        try (Connection database = DriverManager.getConnection(arguments[0])) {
            for (String role : List.of("OFFICE", "TECHNICIAN", "MANAGER")) {
                write(database, role, hash);
            }
        }
    }

    private static void write(Connection database, String role, String hash) throws SQLException {
        UUID person = UUID.randomUUID();
        UUID account = UUID.randomUUID();
        run(database, "insert into people (id, name) values (?, ?)", person, role);
        run(
                database,
                "insert into accounts (id, person_id, login, password_hash) values (?, ?, ?, ?)",
                account,
                person,
                role.toLowerCase(Locale.ROOT),
                hash);
        run(database, "insert into account_roles (account_id, role) values (?, ?)", account, role);
    }

    private static void run(Connection database, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = database.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }
}
