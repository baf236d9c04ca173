package app.ramkeeper.visits.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.web.Say;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@PageTest
class VisitPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Visits visits;

    @Autowired
    Sites sites;

    @Autowired
    FieldPeople people;

    @Autowired
    Installs installs;

    @Autowired
    Accounts accounts;

    @Autowired
    EntityManager entities;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private SiteId site;
    private PersonId ada;
    private LocalDate day;

    @BeforeEach
    void register() {
        site = sites.named("Beck field");
        ada = people.named("Ada Fell");
        day = LocalDate.now(clock).plusDays(9);
    }

    @Test
    void listsByDayAndPerson() {
        VisitId visit = planned();
        assertThat(get("/visits?from=" + day + "&to=" + day + "&person=" + ada.value()))
                .hasStatusOk()
                .bodyText()
                .contains("Beck field", "/visits/" + visit.value());
        assertThat(get("/visits?state=DONE&person=" + ada.value()))
                .hasStatusOk()
                .bodyText()
                .doesNotContain("/visits/" + visit.value());
        assertThat(get("/visits?from=yesterday")).hasStatusOk().bodyText().contains("could not be read");
    }

    @Test
    void plansForAChosenSite() {
        assertThat(get("/visits/new?site=" + site.value()))
                .hasStatusOk()
                .bodyText()
                .contains("Beck field");
        assertThat(post("/visits")
                        .param("site", site.value().toString())
                        .param("kind", "SERVICE")
                        .param("minutes", "45")
                        .param("on", day.toString())
                        .param("from", "09:30")
                        .param("lead", ada.value().toString()))
                .hasStatus3xxRedirection();
        assertThat(get("/visits?from=" + day + "&person=" + ada.value()))
                .bodyText()
                .contains("09:30");
    }

    @Test
    void findsASiteByHalfAName() {
        assertThat(get("/visits/new?q=Beck")).hasStatusOk().bodyText().contains("value=\"" + site.value() + "\"");
    }

    @Test
    void sec13KeepsWhatWasTypedInAPlanThatCannotStand() {
        assertThat(post("/visits")
                        .param("site", site.value().toString())
                        .param("kind", "SERVICE")
                        .param("minutes", "soon")
                        .param("on", "2020-01-01")
                        .param("note", "Bring <key>"))
                .hasStatus(422)
                .bodyText()
                .contains("value=\"soon\"", "2020-01-01", "Bring &lt;key&gt;");
    }

    @Test
    void putsDownAnswersAndCancelsWithAReason() {
        String page = "/visits/" + planned().value();
        assertThat(post(page + "/answers").param("how", "PHONE")).hasStatus(422);
        assertThat(post(page + "/answers")
                        .param("how", "PHONE")
                        .param("answer", "CONFIRMED")
                        .param("said", "After milking"))
                .hasStatus3xxRedirection();
        assertThat(post(page + "/cancel")).hasStatus(422).bodyText().contains("Say why the visit is cancelled.");
        assertThat(post(page + "/cancel").param("cancelReason", "Farm sold")).hasStatus3xxRedirection();
        assertThat(get(page)).hasStatusOk().bodyText().contains("After milking", "Farm sold", "confirmed");
    }

    /** Whoever rings the customer needs no other page. */
    @Test
    void namesWhomToRingBesideTheAnswer() {
        SiteId farm = sites.ownedBy("Rowan Dell", "Beck top");
        entities.flush();
        jdbc.sql("update sites set way_in = 'Past the shed' where id = ?")
                .param(farm.value())
                .update();
        jdbc.sql(
                        "update customers set phone = '021 555 0199' where id = (select customer_id from site_parties where site_id = ?)")
                .param(farm.value())
                .update();
        VisitId visit =
                visits.plan(new PlanVisit(farm, VisitKind.SERVICE, day, null, 60, List.of(ada), List.of(), "Theirs"));

        assertThat(get("/visits/" + visit.value()))
                .hasStatusOk()
                .bodyText()
                .contains("Rowan Dell", "tel:021 555 0199", "Past the shed");
    }

    @Test
    void putsTasksOnAPlannedVisitAndTakesThemOff() {
        InstallId install = installs.commissioned(site, LocalDate.now(clock).minusYears(5));
        List<String> due = jdbc.sql(
                        "select id::text from service_tasks where install_id = ? and window_from <= current_date order by id")
                .param(install.value())
                .query(String.class)
                .list();
        String page = "/visits/" + planned().value();
        assertThat(get(page + "/change")).bodyText().contains("Tasks to do there", "value=\"" + due.get(0) + "\"");

        assertThat(change(page, "0").param("task", due.get(0), due.get(1))).hasStatus3xxRedirection();
        assertThat(asked(page)).containsExactlyInAnyOrder(due.get(0), due.get(1));
        assertThat(get(page + "/change")).bodyText().containsPattern("value=\"" + due.get(0) + "\"[^>]*checked");

        assertThat(change(page, "1").param("task", due.get(1))).hasStatus3xxRedirection();
        assertThat(asked(page)).containsExactly(due.get(1));
    }

    @Test
    void offersOnlyThoseWhoGoOut() {
        PersonId old = accounts.addPersonOfHistory("Jude of the old books");
        PersonId desk = people.named("Desk only");
        accounts.create(new Accounts.NewAccount(desk, "desk-" + UUID.randomUUID(), null, Set.of(Role.OFFICE)));
        entities.flush();

        assertThat(get("/visits/new?site=" + site.value()))
                .bodyText()
                .contains("Who goes", ada.value().toString())
                .doesNotContain("Who led", old.value().toString(), desk.value().toString());
    }

    @Test
    void leadsOnFromACancelledVisit() {
        String page = "/visits/" + planned().value();
        assertThat(post(page + "/cancel").param("cancelReason", "Farm sold")).hasStatus3xxRedirection();

        assertThat(get(page)).bodyText().contains("Plan it again", "/visits/new?site=" + site.value());
    }

    @Test
    void saysForWhichDayACustomerConfirmed() {
        String page = "/visits/" + planned().value();
        assertThat(post(page + "/answers").param("how", "PHONE").param("answer", "CONFIRMED"))
                .hasStatus3xxRedirection();
        LocalDate before = day;
        day = day.plusDays(3);
        assertThat(change(page, "1")).hasStatus3xxRedirection();

        assertThat(get(page)).bodyText().contains("not told", "(about " + Say.day(before) + ")");
    }

    private List<String> asked(String page) {
        return jdbc.sql("select task_id::text from visit_tasks where visit_id = ?::uuid")
                .param(page.substring(page.lastIndexOf('/') + 1))
                .query(String.class)
                .list();
    }

    @Test
    void flt29ALostUpdateShowsBothTexts() {
        String page = "/visits/" + planned().value();
        assertThat(change(page, "999").param("note", "Mine"))
                .hasStatus(409)
                .bodyText()
                .contains("Mine", "Theirs");
        assertThat(get(page)).bodyText().contains("Theirs");
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void sec64AnswersUnknownVisitsAsMissing() {
        assertThat(get("/visits/" + UUID.randomUUID())).hasStatus(404);
        assertThat(get("/visits/none")).hasStatus(404);
        assertThat(get("/visits/new?site=" + UUID.randomUUID())).hasStatus(404);
    }

    @Test
    void sec13ATechnicianReadsAVisitButPlansNone() {
        VisitId visit = planned();
        assertThat(mvc.get().uri("/visits/{id}", visit.value()).with(user(PageTest.As.who(ada, Role.TECHNICIAN))))
                .hasStatusOk()
                .bodyText()
                .doesNotContain("/cancel");
        assertThat(mvc.get().uri("/visits/new").with(user(PageTest.As.who(ada, Role.TECHNICIAN))))
                .hasStatus(403);
    }

    private VisitId planned() {
        return visits.plan(new PlanVisit(site, VisitKind.SERVICE, day, null, 60, List.of(ada), List.of(), "Theirs"));
    }

    private MockMvcRequestBuilder change(String page, String version) {
        return post(page + "/change")
                .param("version", version)
                .param("kind", "SERVICE")
                .param("minutes", "60")
                .param("on", day.toString());
    }

    private MockMvcRequestBuilder get(String uri) {
        return mvc.get().uri(uri).with(user(PageTest.As.who(ada, Role.OFFICE)));
    }

    private MockMvcRequestBuilder post(String uri) {
        return mvc.post().uri(uri).with(user(PageTest.As.who(ada, Role.OFFICE))).with(csrf());
    }
}
