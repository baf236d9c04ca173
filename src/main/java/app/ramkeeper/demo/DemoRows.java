package app.ramkeeper.demo;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;

/** Rows that wait to be written together: table after table in the order in which each was first named. */
final class DemoRows {

    private final Map<String, List<@Nullable Object[]>> waiting = new LinkedHashMap<>();

    /** Keeps a row; the columns are written as in an insert: {@code "sites (id, name)"}. */
    void add(String table, @Nullable Object... values) {
        waiting.computeIfAbsent(table, name -> new ArrayList<>()).add(plain(values));
    }

    void write(JdbcTemplate jdbc) {
        waiting.forEach((table, rows) -> {
            String marks = Arrays.stream(rows.get(0)).map(value -> "?").collect(Collectors.joining(", "));
            jdbc.batchUpdate("insert into " + table + " values (" + marks + ")", rows);
        });
        waiting.clear();
    }

    private static @Nullable Object[] plain(@Nullable Object[] values) {
        return Arrays.stream(values)
                .map(value -> value instanceof Instant instant ? Timestamp.from(instant) : value)
                .toArray();
    }
}
