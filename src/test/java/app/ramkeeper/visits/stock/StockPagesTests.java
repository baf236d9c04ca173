package app.ramkeeper.visits.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, FieldPeople.class})
class StockPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    private PersonId clerk;
    private UUID part;
    private UUID van;
    private UUID other;
    private String batch;

    @BeforeEach
    void twoVansAndAPart() {
        clerk = people.named("Ngaire Holt");
        part = Uuids.next();
        batch = "B" + part;
        jdbc.sql("insert into parts (id, number, name, kind) values (:id, :number, 'Rubber', 'VALVE_RUBBER')")
                .param("id", part)
                .param("number", "R-" + part)
                .update();
        van = van(clerk);
        other = van(people.named("Ada Fell"));
    }

    @Test
    @DisplayName("SEC-19 gives the last part out once to twenty who ask at once")
    void sec19GivesTheLastPartOutOnce() {
        assertThat(step("receive", Uuids.next(), "1")).isEqualTo(302);

        List<Integer> answers = IntStream.range(0, 20)
                .parallel()
                .mapToObj(n -> step("move", Uuids.next(), "1"))
                .toList();

        assertThat(answers).containsOnly(302, 409);
        assertThat(answers.stream().filter(status -> status == 302)).hasSize(1);
        assertThat(level(van)).isZero();
        assertThat(level(other)).isOne();
    }

    @Test
    @DisplayName("SYN-23 counts a form sent twice once")
    void syn23CountsOnce() {
        UUID move = Uuids.next();

        assertThat(step("receive", move, "4")).isEqualTo(302);
        assertThat(step("receive", move, "4")).isEqualTo(302);
        assertThat(level(van)).isEqualTo(4);
    }

    @Test
    void countsScrapsAndShows() {
        step("receive", Uuids.next(), "4");
        step("count", Uuids.next(), "3");
        step("scrap", Uuids.next(), "1");

        assertThat(level(van)).isEqualTo(2);
        assertThat(get("/stock?place=" + van)).contains(batch, "Rubber");
        assertThat(get("/stock/movements?part=" + part)).contains("scrapped", "counted", "received");
        assertThat(get("/stock/recall?batch=" + batch.toLowerCase(java.util.Locale.ROOT)))
                .contains("R-" + part);
        assertThat(get("/stock/scrap")).contains("Take off the ledger");
        assertThat(get("/stock/places")).contains("Van ");
        assertThat(get("/instruments")).contains("Add an instrument");
    }

    @Test
    @DisplayName("SEC-13 refuses numbers that are none")
    void sec13RefusesBadQuantities() {
        assertThat(step("receive", Uuids.next(), "-1")).isEqualTo(422);
        assertThat(step("receive", Uuids.next(), "1e309")).isEqualTo(422);
        assertThat(step("scrap", Uuids.next(), "0")).isEqualTo(422);
    }

    @Test
    void refusesATechnician() {
        assertThat(mvc.get().uri("/stock").with(user(as(Role.TECHNICIAN)))).hasStatus(403);
    }

    private UUID van(PersonId of) {
        UUID id = Uuids.next();
        jdbc.sql("insert into stock_places (id, kind, person_id, name) values (:id, 'VAN', :person, :name)")
                .param("id", id)
                .param("person", of.value())
                .param("name", "Van " + id)
                .update();
        return id;
    }

    private int step(String step, UUID move, String quantity) {
        MvcTestResult answer = mvc.post()
                .uri("/stock/" + step)
                .with(user(as(Role.OFFICE)))
                .with(csrf())
                .param("move", move.toString())
                .param("part", part.toString())
                .param("place", van.toString())
                .param("to", step.equals("move") ? other.toString() : "")
                .param("quantity", quantity)
                .param("batch", batch)
                .exchange();
        return answer.getResponse().getStatus();
    }

    private int level(UUID place) {
        return jdbc.sql("select coalesce(sum(quantity), 0)::int from stock_levels where place_id = :place")
                .param("place", place)
                .query(Integer.class)
                .single();
    }

    private String get(String path) {
        MvcTestResult answer = mvc.get().uri(path).with(user(as(Role.OFFICE))).exchange();
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private CurrentUser as(Role role) {
        return new CurrentUser(UUID.randomUUID(), clerk.value(), "ngaire", "Ngaire Holt", Set.of(role), null);
    }
}
