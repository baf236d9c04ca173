package app.ramkeeper.bench.pages;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Copies what imports made, row for row, into bare tables with the same constraints and indexes, by batches of 200. */
final class PlainInsert {

    private static final List<String> TABLES = List.of(
            "customers",
            "sites",
            "site_parties",
            "installs",
            "configurations",
            "pumps",
            "pump_fittings",
            "running_states",
            "service_tasks");
    private static final int BATCH = 200;

    private final Connection database;

    PlainInsert(Connection database) {
        this.database = database;
    }

    void run(int rows) throws SQLException {
        database.setAutoCommit(false);
        double seconds = 0;
        long copied = 0;
        for (String table : TABLES) {
            List<String> texts = texts(table);
            long from = System.nanoTime();
            insert(table, texts);
            seconds += ImportBench.seconds(from);
            copied += texts.size();
        }
        ImportBench.say(
                "plain JDBC batches of the same %,d rows of %d tables: %.1f s, %.2f ms an install",
                copied, TABLES.size(), seconds, seconds * 1000 / rows);
        database.rollback();
    }

    private List<String> texts(String table) throws SQLException {
        try (Statement statement = database.createStatement()) {
            statement.execute(String.format(Locale.ROOT, "create table bench_%1$s (like %1$s including all)", table));
            List<String> texts = new ArrayList<>();
            try (var found = statement.executeQuery("select r::text from " + table + " r")) {
                while (found.next()) {
                    texts.add(found.getString(1));
                }
            }
            database.commit();
            return texts;
        }
    }

    private void insert(String table, List<String> texts) throws SQLException {
        try (PreparedStatement insert =
                database.prepareStatement("insert into bench_" + table + " select (cast(? as " + table + ")).*")) {
            int waiting = 0;
            for (String text : texts) {
                insert.setString(1, text);
                insert.addBatch();
                if (++waiting % BATCH == 0) {
                    insert.executeBatch();
                    database.commit();
                }
            }
            insert.executeBatch();
            database.commit();
        }
    }
}
