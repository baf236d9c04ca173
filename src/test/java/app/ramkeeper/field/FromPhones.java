package app.ramkeeper.field;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.ReportsToSettle;
import app.ramkeeper.visits.VisitRecorder;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/** A site, a technician, and what a phone sends. Rows stay, as in life, so that parallel requests see them. */
@PageTest
@Transactional(propagation = Propagation.NOT_SUPPORTED)
abstract class FromPhones {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    JsonMapper json;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    ReportsToSettle settle;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Devices devices;

    @Autowired
    Checklists checklists;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    SiteId site;
    PersonId ada;

    @BeforeEach
    void makeSite() {
        site = sites.named("Spring of " + UUID.randomUUID());
        ada = people.named("Ada " + UUID.randomUUID());
    }

    Map<String, Object> visit(UUID id, String note) {
        Map<String, Object> visit = new HashMap<>();
        visit.put("v", 1);
        visit.put("id", id);
        visit.put("site", site.value());
        visit.put("kind", "SERVICE");
        visit.put("on", LocalDate.now(clock).toString());
        visit.put("outcome", "DONE");
        visit.put("nobodyThere", true);
        visit.put("note", note);
        visit.put("photos", 0);
        return visit;
    }

    Map<String, Object> envelope(PersonId writer, Map<String, Object> visit) {
        String text = json.writeValueAsString(visit);
        Map<String, Object> entry = new HashMap<>();
        entry.put("id", visit.get("id"));
        entry.put("person", writer.value());
        entry.put("text", text);
        entry.put("hash", Intake.sha256(text));
        entry.put("sentAt", clock.instant().toString());
        return entry;
    }

    MvcTestResult send(PersonId as, @Nullable String key, Map<String, Object> entry) {
        var request = mvc.post()
                .uri("/field/entries")
                .with(user(PageTest.As.who(as, Role.TECHNICIAN)))
                .with(csrf())
                .contentType(MediaType.APPLICATION_JSON)
                .content(json.writeValueAsString(entry));
        return (key == null ? request : request.header("Idempotency-Key", key)).exchange();
    }

    MvcTestResult send(PersonId as, Map<String, Object> entry) {
        return send(as, String.valueOf(entry.get("id")), entry);
    }

    long reports(UUID id) {
        return jdbc.sql("select count(*) from visit_reports where id = :id")
                .param("id", id)
                .query(Long.class)
                .single();
    }

    String held(UUID id) {
        return jdbc.sql(
                        "select coalesce((select reason || ' ' || cast(payload as text) from to_settle where report_id = :id), '')")
                .param("id", id)
                .query(String.class)
                .single();
    }

    void account(PersonId person, boolean locked) {
        jdbc.sql(
                        "insert into accounts (id, person_id, login, disabled_at) values (:id, :person, :login, case when :locked then now() end)")
                .param("id", UUID.randomUUID())
                .param("person", person.value())
                .param("login", "phone-" + person.value())
                .param("locked", locked)
                .update();
    }

    record Pool(ExecutorService threads) implements AutoCloseable {
        Pool() {
            this(Executors.newFixedThreadPool(10));
        }

        @Override
        public void close() {
            threads.shutdownNow();
        }
    }
}
