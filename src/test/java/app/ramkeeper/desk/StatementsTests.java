package app.ramkeeper.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitRecorder;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

/** A page costs a fixed, small number of statements, however many rows it shows. */
@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, CountedStatements.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
@WithMockUser(roles = {"TECHNICIAN", "OFFICE"})
class StatementsTests {

    private static final int MOST = 8;

    private static final int FEW = 5;
    private static final int MANY = 15;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Catalogue catalogue;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private LocalDate today;
    private SecurityContext recorders;
    private PersonId ana;
    private SiteId site;
    private InstallId install;

    @BeforeEach
    void somebody() {
        today = LocalDate.now(clock);
        ana = people.named("Ana Weir");
        recorders = SecurityContextHolder.getContext();
    }

    @Test
    void aPageCostsFewStatementsHoweverManyRowsItShows() {
        fill(FEW);
        prepareTheWeek();
        Map<String, Integer> few = counts();
        fill(MANY);
        prepareTheWeek();
        Map<String, Integer> many = counts();

        assertThat(many)
                .allSatisfy((page, statements) -> assertThat(statements)
                        .as("%s: %s", page, CountedStatements.SEEN.get(page))
                        .isBetween(1, MOST));
        assertThat(many).as("no page asks again for each row").isEqualTo(few);
    }

    private void prepareTheWeek() {
        assertThat(mvc.post()
                        .uri("/rounds/" + monday() + "/prepare")
                        .with(user(who(Role.OFFICE)))
                        .with(csrf())
                        .exchange())
                .hasStatus3xxRedirection();
    }

    private LocalDate monday() {
        return today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    private CurrentUser who(Role role) {
        return new CurrentUser(Uuids.next(), ana.value(), "ana", "Ana Weir", Set.of(role), null);
    }

    private Map<String, Integer> counts() {
        Map<String, Integer> counts = new LinkedHashMap<>();
        count(counts, "due list", Role.OFFICE, "/due");
        count(counts, "overdue", Role.MANAGER, "/overdue");
        count(counts, "site sheet", Role.TECHNICIAN, "/sites/" + site + "/sheet");
        count(counts, "search", Role.OFFICE, "/sites?q=counted block");
        count(counts, "my day", Role.TECHNICIAN, "/my-day");
        count(counts, "calls", Role.OFFICE, "/calls");
        count(counts, "visits", Role.OFFICE, "/visits");
        count(counts, "week", Role.OFFICE, "/rounds/" + monday());
        count(counts, "quotes", Role.OFFICE, "/quotes");
        count(counts, "install history", Role.OFFICE, "/installs/" + install + "/history");
        return counts;
    }

    private void count(Map<String, Integer> counts, String page, Role role, String path) {
        mvc.get().uri(path).with(user(who(role))).exchange();
        List<String> seen = CountedStatements.during(
                page,
                () -> assertThat(mvc.get().uri(path).with(user(who(role))).exchange())
                        .as(path)
                        .hasStatusOk());
        counts.put(page, seen.size());
    }

    /** So many sites with overdue work, visits past and planned, calls and quotes; and as many reports of the first. */
    private void fill(int many) {
        // a request leaves no signed-in person behind
        SecurityContextHolder.setContext(recorders);
        TaskKindId strainer = catalogue.taskKind("CLEAN_STRAINER").orElseThrow().id();
        for (int i = 0; i < many; i++) {
            SiteId next = sites.ownedBy("Counted owner " + i, "Counted block " + i);
            InstallId there = installs.commissioned(next, today.minusYears(6));
            installs.commissioned(next, today.minusYears(5));
            if (site == null) {
                site = next;
                install = there;
            }
            report(next, there, strainer, today.minusDays(800 + i));
            report(site, install, strainer, today.minusDays(900 + i));
            visit(next);
            call(next);
            quote(next, i);
        }
    }

    private void report(SiteId at, InstallId of, TaskKindId kind, LocalDate on) {
        recorder.record(
                Reports.service(at, ana, on)
                        .done(of, kind)
                        .reading(of, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "3.9", Unit.LITRE_PER_MINUTE)
                        .reading(of, Quantity.DRIVE_FLOW, MeasuredAt.SOURCE, "60", Unit.LITRE_PER_MINUTE)
                        .finding(new RecordVisit.Finding(of, Symptom.LEAK_PUMP, null, "new seal"))
                        .note("Beat even")
                        .build(),
                ana);
    }

    private void visit(SiteId at) {
        UUID visit = Uuids.next();
        jdbc.sql("insert into visits (id, site_id, kind, planned_on, state) values (?, ?, 'SERVICE', ?, 'PLANNED')")
                .params(visit, at.value(), today)
                .update();
        jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (?, ?, true)")
                .params(visit, ana.value())
                .update();
        jdbc.sql("""
                        insert into visit_tasks (visit_id, task_id, install_id, task_kind_id)
                        select ?, t.id, t.install_id, t.task_kind_id from service_tasks t join installs i on i.id = t.install_id
                        where i.site_id = ?""").params(visit, at.value()).update();
    }

    private void call(SiteId at) {
        jdbc.sql(
                        "insert into calls (id, received_at, taken_by, site_id, symptom) values (?, now(), ?, ?, 'STOPPED_OPEN')")
                .params(Uuids.next(), ana.value(), at.value())
                .update();
    }

    private void quote(SiteId at, int number) {
        UUID quote = Uuids.next();
        jdbc.sql("""
                        insert into quotes (id, site_id, title, customer_name, place, created_at, created_by)
                        values (?, ?, ?, 'Counted owner', 'Counted block', now(), 'ana')""").params(quote, at.value(), "Counted quote " + number).update();
        jdbc.sql("""
                        insert into quote_revisions (id, quote_id, revision, currency, tax_rounding, valid_until)
                        values (?, ?, 1, 'NZD', 'TOTAL', ?)""").params(Uuids.next(), quote, today.plusDays(30)).update();
    }
}
