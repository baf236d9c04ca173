package app.ramkeeper.shared;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.json.JsonMapper;

/** Reads several lists that belong together by one statement, into a record that names each of them. */
public final class OneStatement {

    private static final JsonMapper JSON = JsonMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .build();

    private final List<String> lists = new ArrayList<>();

    /** A list of the record and the select that gives its rows; columns are named as the row's fields. */
    public OneStatement list(String name, String select) {
        lists.add("'" + name + "', (select coalesce(json_agg(r), '[]') from (" + select + ") r)");
        return this;
    }

    public <T> T read(JdbcClient jdbc, Map<String, ?> params, Class<T> type) {
        String all = jdbc.sql("select json_build_object(" + String.join(", ", lists) + ")::text")
                .params(params)
                .query(String.class)
                .single();
        return JSON.readValue(all, type);
    }
}
