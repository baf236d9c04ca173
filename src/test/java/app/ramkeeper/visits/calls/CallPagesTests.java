package app.ramkeeper.visits.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.fleet.SitesMerged;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.web.Say;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
class CallPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    @Autowired
    ApplicationEventPublisher events;

    private String name;
    private SiteId site;
    private PersonId clerk;

    @BeforeEach
    void aSiteAndAClerk() {
        name = "Larkspur " + Uuids.next();
        site = sites.named(name);
        clerk = people.named("Ngaire Holt");
    }

    @Test
    void takesACallAndShowsIt() {
        UUID id = Uuids.next();

        assertThat(post("/calls", call(id))).hasStatus(302).hasRedirectedUrl("/calls/" + id);

        assertThat(text(get("/calls/" + id)))
                .contains(name, "Less water than usual", "Ngaire Holt", "Plan the call-out");
        assertThat(text(get("/calls"))).contains(name, "no visit yet", "stock dry");
        assertThat(text(get("/calls?show=all"))).contains(name);
        assertThat(text(get("/calls?show=all&after=junk"))).contains(name);
    }

    @Test
    void showsWhereItsVisitStandsInTheDraftOfAWeek() {
        UUID id = Uuids.next();
        post("/calls", call(id));
        UUID visit = Uuids.next();
        jdbc.sql("insert into visits (id, site_id, kind, minutes) values (?, ?, 'CALL_OUT', 60)")
                .params(visit, site.value())
                .update();
        jdbc.sql("update calls set visit_id = ? where id = ?").params(visit, id).update();
        assertThat(text(get("/calls/" + id))).contains("no day yet").doesNotContain("In the draft");

        LocalDate monday = LocalDate.now(clock).plusWeeks(70).with(DayOfWeek.MONDAY);
        UUID plan = Uuids.next();
        jdbc.sql("insert into week_plans (id, monday) values (?, ?)")
                .params(plan, monday)
                .update();
        UUID stop = Uuids.next();
        jdbc.sql("""
                        insert into week_stops (id, plan_id, site_id, visit_id, kind, minutes, must, worth, why)
                        values (?, ?, ?, ?, 'CALL_OUT', 60, true, 1, 'call')""").params(stop, plan, site.value(), visit).update();
        assertThat(text(get("/calls/" + id)))
                .contains("In the draft of the week of " + Say.day(monday), "not in a round yet");

        jdbc.sql("update week_stops set person_id = ?, day = ?, position = 0 where id = ?")
                .params(clerk.value(), monday.plusDays(1), stop)
                .update();
        assertThat(text(get("/calls/" + id)))
                .contains("/rounds/" + monday + "/stops/" + stop)
                .contains(Say.day(monday.plusDays(1)) + ", Ngaire Holt; not published yet");

        jdbc.sql("update visits set planned_on = ? where id = ?")
                .params(monday.plusDays(1), visit)
                .update();
        assertThat(text(get("/calls/" + id))).doesNotContain("In the draft");
    }

    @Test
    void saysWhatToTryWithTheCautionsFirst() {
        assertThat(text(get("/calls/new"))).contains("never stopped by shutting its delivery valve");
        assertThat(text(get("/calls/advice?symptom=STOPPED_SHUT"))).contains("Push the waste valve open");
        for (app.ramkeeper.visits.Symptom symptom : app.ramkeeper.visits.Symptom.values()) {
            assertThat(text(get("/calls/advice?symptom=" + symptom))).contains("<li>");
        }
    }

    @Test
    void showsTheStoryBeside() {
        installs.commissioned(site, LocalDate.of(2021, 3, 4));

        assertThat(text(get("/calls/beside?site=" + site))).contains(name, "Top ram", "No visit is recorded");
        assertThat(text(get("/calls/new?site=" + site))).contains(name, "Top ram");
    }

    @Test
    void findsTheSiteWithoutScriptAndKeepsWhatWasTyped() {
        String answer = text(post(
                "/calls", new String[] {"id", Uuids.next().toString(), "q", name, "caller", "Old Tom", "find", "yes"}));

        assertThat(answer).contains(site.toString(), "Old Tom").doesNotContain("Please mend this");
        assertThat(count()).isZero();
    }

    @ParameterizedTest
    @DisplayName("SEC-13 refuses what the form would not send and keeps what was typed")
    @CsvSource({
        "waterHoursLeft,-1",
        "waterHoursLeft,1e309",
        "waterHoursLeft,10001",
        "symptom,SUNK",
        "symptom,''",
        "promisedBy,2026-02-30T10:00",
        "site,not-an-id"
    })
    void sec13RefusesBadInput(String field, String value) {
        MvcTestResult answer = post("/calls", with(call(Uuids.next()), field, value));

        assertThat(answer).hasStatus(422);
        assertThat(text(answer)).contains("Please mend this", "Marram Fenn");
        assertThat(count()).isZero();
    }

    @Test
    @DisplayName("SEC-13 refuses a text that is too long")
    void sec13RefusesLongText() {
        assertThat(post("/calls", with(call(Uuids.next()), "note", "x".repeat(10_001))))
                .hasStatus(422);
        assertThat(count()).isZero();
    }

    @Test
    void refusesAPromiseForATimeThatIsPast() {
        assertThat(text(post("/calls", with(call(Uuids.next()), "promisedBy", "2020-01-01T10:00"))))
                .contains("This time is past already.");
        assertThat(count()).isZero();
    }

    @Test
    @DisplayName("SEC-14 refuses an install of another site, a time without promise, and a call from nowhere")
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void sec14ChecksTogether() {
        InstallId elsewhere = installs.commissioned(LocalDate.of(2021, 3, 4));

        assertThat(text(post("/calls", with(call(Uuids.next()), "install", elsewhere.toString()))))
                .contains("at another site");
        assertThat(text(post("/calls", with(call(Uuids.next()), "promise", ""))))
                .contains("what was promised");
        assertThat(text(post("/calls", with(call(Uuids.next()), "site", "")))).contains("say in words where");
        assertThat(text(post(
                        "/calls",
                        with(call(Uuids.next()), "site", UUID.randomUUID().toString()))))
                .contains("no such site");
        assertThat(count()).isZero();
    }

    @ParameterizedTest
    @DisplayName("FLT-29 refuses control characters beside the field")
    @ValueSource(strings = {"q", "caller", "phone", "placeText", "advice", "promise", "note"})
    void flt29RefusesNul(String field) {
        assertThat(post("/calls", with(call(Uuids.next()), field, "a\0b"))).hasStatus(422);
    }

    @Test
    @DisplayName("SYN-23 makes one call of a form sent twice, and loses no words that differ")
    void syn23OneFormOneCall() {
        UUID id = Uuids.next();
        post("/calls", call(id));

        assertThat(post("/calls", call(id))).hasStatus(302).hasRedirectedUrl("/calls/" + id);
        MvcTestResult other = post("/calls", with(call(id), "note", "and the dog bites"));
        assertThat(other).hasStatus(409);
        assertThat(text(other)).contains("and the dog bites", "/calls/" + id);
        assertThat(count()).isOne();
    }

    @Test
    @DisplayName("SYN-10 shows both texts of a lost update")
    void syn10ShowsBoth() {
        UUID id = Uuids.next();
        post("/calls", call(id));
        assertThat(post("/calls/" + id + "/edit", with(with(call(id), "version", "0"), "note", "first words")))
                .hasStatus(302);

        MvcTestResult late =
                post("/calls/" + id + "/edit", with(with(call(id), "version", "0"), "note", "later words"));

        assertThat(late).hasStatus(409);
        assertThat(text(late)).contains("first words", "later words", "name=\"version\" value=\"1\"");
    }

    @Test
    void editsACall() {
        UUID id = Uuids.next();
        post("/calls", call(id));

        assertThat(text(get("/calls/" + id + "/edit"))).contains("Marram Fenn", name);
        assertThat(post("/calls/" + id + "/edit", with(with(call(id), "version", "0"), "caller", "Rua Birk")))
                .hasStatus(302);
        assertThat(text(get("/calls/" + id))).contains("Rua Birk");
        assertThat(post("/calls/" + id + "/edit", with(with(call(id), "version", "1"), "symptom", "X")))
                .hasStatus(422);
    }

    @Test
    @DisplayName("SEC-17 plans one visit for a call, closes it once, and changes nothing after")
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void sec17StepsInOrder() {
        UUID id = Uuids.next();
        post("/calls", call(id));
        String[] plan = {
            "on", LocalDate.now(clock).toString(), "from", "14:00", "minutes", "60", "lead", clerk.toString()
        };

        assertThat(post("/calls/" + id + "/visit", with(plan, "lead", ""))).hasStatus(422);
        assertThat(post("/calls/" + id + "/visit", with(plan, "on", "2020-01-01")))
                .hasStatus(422);
        assertThat(post("/calls/" + id + "/visit", plan)).hasStatus(302);
        assertThat(post("/calls/" + id + "/visit", plan)).hasStatus(409);
        assertThat(jdbc.sql("select kind || ' ' || state from visits where site_id = :site")
                        .param("site", site.value())
                        .query(String.class)
                        .list())
                .containsExactly("CALL_OUT PLANNED");

        assertThat(post("/calls/" + id + "/close", "closedNote", "")).hasStatus(422);
        assertThat(post("/calls/" + id + "/close", "closedNote", "runs again")).hasStatus(302);
        assertThat(post("/calls/" + id + "/close", "closedNote", "twice")).hasStatus(409);
        MvcTestResult late = post("/calls/" + id + "/edit", with(call(id), "version", "2"));
        assertThat(text(late)).contains("closed and stands as it is");
        assertThat(text(get("/calls/" + id))).contains("runs again").doesNotContain("twice");
    }

    @Test
    void asksForTheSiteBeforeTheVisit() {
        UUID id = Uuids.next();
        post("/calls", with(with(call(id), "site", ""), "placeText", "the long hut"));

        assertThat(text(get("/calls/" + id))).contains("the long hut", "Give the call its site first");
        assertThat(post("/calls/" + id + "/visit", "on", "2030-01-01", "minutes", "60", "lead", clerk.toString()))
                .hasStatus(409);
    }

    @Test
    void movesPlansAndCallsOfADuplicateToTheKeptSite() {
        UUID id = Uuids.next();
        post("/calls", call(id));
        post(
                "/calls/" + id + "/visit",
                "on",
                LocalDate.now(clock).toString(),
                "minutes",
                "60",
                "lead",
                clerk.toString());
        SiteId kept = sites.named("Kept " + Uuids.next());

        events.publishEvent(new SitesMerged(site, kept));

        assertThat(jdbc.sql(
                                "select c.site_id = :kept and v.site_id = :kept from calls c join visits v on v.id = c.visit_id where c.id = :id")
                        .param("kept", kept.value())
                        .param("id", id)
                        .query(Boolean.class)
                        .single())
                .isTrue();
    }

    @Test
    void refusesWhoIsNotOfTheOffice() {
        for (String path : new String[] {"/calls", "/calls/new", "/calls/" + UUID.randomUUID()}) {
            assertThat(mvc.get().uri(path).with(user(as(Role.TECHNICIAN)))).hasStatus(403);
            assertThat(mvc.get().uri(path).with(user(as(Role.ADMINISTRATOR)))).hasStatus(403);
        }
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void answersAnUnknownCallAsMissing() {
        UUID id = UUID.randomUUID();

        assertThat(get("/calls/" + id)).hasStatus(404);
        assertThat(get("/calls/" + id + "/edit")).hasStatus(404);
        assertThat(get("/calls/beside?site=" + id)).hasStatus(404);
        assertThat(get("/calls/none")).hasStatus(404);
        assertThat(post("/calls/" + id + "/close", "closedNote", "x")).hasStatus(404);
    }

    private String[] call(UUID id) {
        return new String[] {
            "id",
            id.toString(),
            "site",
            site.toString(),
            "caller",
            "Marram Fenn",
            "phone",
            "555 0101",
            "symptom",
            "LESS_WATER",
            "waterHoursLeft",
            "12,5",
            "stockDry",
            "true",
            "advice",
            "Clean the strainer",
            "promise",
            "Somebody comes",
            "promisedBy",
            "2030-01-02T10:30"
        };
    }

    private static String[] with(String[] fields, String name, String value) {
        String[] more = java.util.Arrays.copyOf(fields, fields.length + 2);
        for (int i = 0; i < fields.length; i += 2) {
            if (fields[i].equals(name)) {
                more = fields.clone();
                more[i + 1] = value;
                return more;
            }
        }
        more[fields.length] = name;
        more[fields.length + 1] = value;
        return more;
    }

    private MvcTestResult get(String path) {
        return mvc.get()
                .uri(java.net.URI.create(path))
                .with(user(as(Role.OFFICE)))
                .exchange();
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post().uri(path).with(user(as(Role.OFFICE))).with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private static String text(MvcTestResult answer) {
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private long count() {
        return jdbc.sql("select count(*) from calls where taken_by = :by")
                .param("by", clerk.value())
                .query(Long.class)
                .single();
    }

    private CurrentUser as(Role role) {
        return new CurrentUser(UUID.randomUUID(), clerk.value(), "ngaire", "Ngaire Holt", Set.of(role), null);
    }
}
