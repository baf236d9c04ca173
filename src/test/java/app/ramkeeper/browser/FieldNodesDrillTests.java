package app.ramkeeper.browser;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import com.microsoft.playwright.APIRequestContext;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.RequestOptions;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ConfigurableApplicationContext;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Two servers on one database: what one has confirmed, the other shows at once. */
class FieldNodesDrillTests extends FieldRun {

    private static final int TIMES = 200;

    @Autowired
    JsonMapper json;

    private APIRequestContext http;
    private PersonId person;

    @Test
    @DisplayName(
            "SYN-24 a visit sent to one node and read on the other right after, 200 times: report, lists and count show it")
    void syn24SeenOnTheOtherNodeAtOnce() {
        Page page = phone();
        person = signIn(page, "Vida Nook", Role.TECHNICIAN, Role.OFFICE);
        http = page.request();
        try (ConfigurableApplicationContext second = another()) {
            String[] nodes = {
                "http://localhost:" + port,
                "http://localhost:" + second.getEnvironment().getProperty("local.server.port")
            };
            for (int i = 1; i <= TIMES; i++) {
                String there = nodes[(i + 1) % 2];
                UUID id = send(nodes[i % 2], i);

                assertThat(read(there, "/visits/reports/" + id)).contains("seen " + i + " at once");
                assertThat(read(there, "/phones")).as("list, time %d", i).contains("/visits/reports/" + id);
                JsonNode bundle = json.readTree(read(there, "/field/bundle"));
                assertThat(mine(bundle, "followUps")).as("count, time %d", i).isEqualTo(i);
                assertThat(bundle.get("visits").toString())
                        .as("feed, time %d", i)
                        .contains("seen " + i + " at once");
            }
        }
        assertThat(reports()).isEqualTo(TIMES);
    }

    private long mine(JsonNode bundle, String section) {
        long count = 0;
        for (JsonNode item : bundle.get(section)) {
            count += item.get("site").asString().equals(site.toString()) ? 1 : 0;
        }
        return count;
    }

    private String read(String node, String path) {
        APIResponse answer = http.get(node + path);
        assertThat(answer.status()).as(path).isEqualTo(200);
        return answer.text();
    }

    private UUID send(String node, int i) {
        JsonNode session = json.readTree(read(node, "/field/session"));
        UUID id = UUID.randomUUID();
        String text = json.writeValueAsString(Map.of(
                "v",
                1,
                "id",
                id,
                "site",
                site,
                "kind",
                "SERVICE",
                "on",
                LocalDate.now(clock).toString(),
                "outcome",
                "DONE",
                "nobodyThere",
                true,
                "note",
                "seen " + i + " at once",
                "photos",
                0,
                "followUps",
                java.util.List.of(Map.of("text", "Look again " + i, "promised", false))));
        APIResponse answer = http.post(
                node + "/field/entries",
                RequestOptions.create()
                        .setHeader("Content-Type", "application/json")
                        .setHeader("Idempotency-Key", id.toString())
                        .setHeader(
                                session.get("csrfHeader").asString(),
                                session.get("csrf").asString())
                        .setData(json.writeValueAsString(
                                Map.of("id", id, "person", person.value(), "text", text, "hash", sha256(text)))));
        assertThat(answer.status()).as(answer.text()).isEqualTo(200);
        assertThat(answer.text()).contains("APPLIED");
        return id;
    }

    private static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}
