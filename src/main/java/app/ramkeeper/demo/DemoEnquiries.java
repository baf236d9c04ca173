package app.ramkeeper.demo;

import app.ramkeeper.shared.Uuids;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import tools.jackson.databind.json.JsonMapper;

/** The invented enquiries of {@code db/demo/enquiries.json}, with surveys at different states. */
final class DemoEnquiries {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private record Asked(
            String customer,
            @Nullable String phone,
            @Nullable String email,
            String place,
            int daysAgo,
            @Nullable String state,
            @Nullable String reason,
            String note,
            List<Surveyed> surveys) {}

    private record Surveyed(int daysAgo, Map<String, String> typed) {}

    private DemoEnquiries() {}

    static void write(JdbcTemplate jdbc, LocalDate today) {
        try (InputStream text =
                Objects.requireNonNull(DemoEnquiries.class.getResourceAsStream("/db/demo/enquiries.json"))) {
            for (Asked asked : JSON.readValue(text, Asked[].class)) {
                add(jdbc, today, asked);
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private static void add(JdbcTemplate jdbc, LocalDate today, Asked asked) {
        UUID id = Uuids.next();
        jdbc.update(
                "insert into enquiries (id, customer_name, phone, email, place, received_on, note, state, reason)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                id,
                asked.customer(),
                asked.phone(),
                asked.email(),
                asked.place(),
                today.minusDays(asked.daysAgo()),
                asked.note(),
                asked.state() == null ? "OPEN" : asked.state(),
                asked.reason());
        for (Surveyed surveyed : asked.surveys()) {
            LocalDate on = today.minusDays(surveyed.daysAgo());
            surveyed.typed().put("surveyedOn", on.toString());
            jdbc.update(
                    "insert into surveys (id, enquiry_id, surveyed_on, draft) values (?, ?, ?, ?::jsonb)",
                    Uuids.next(),
                    id,
                    on,
                    JSON.writeValueAsString(surveyed.typed()));
        }
    }
}
