package app.ramkeeper.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.web.Saved;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

/** Each role's first page answers that role's question without a click. */
@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
class HomeTests {

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

    @Test
    void showsTheOfficeWhatMustGoIntoTheWeek() {
        SiteId site = sites.named("Overdue " + Uuids.next());
        installs.commissioned(site, today().minusYears(20));

        assertThat(home(Role.OFFICE))
                .contains("Must go into this week")
                .doesNotContain("Keeps the lists from being right");
    }

    /** "Water left" as of the call would be read as of now. */
    @Test
    void saysUntilWhenTheWaterOfACallerLasts() {
        SiteId site = sites.named("Dry " + Uuids.next());
        jdbc.sql("""
                        insert into calls (id, received_at, taken_by, site_id, symptom, water_hours_left, stock_dry)
                        values (?, timestamptz '2026-01-05 19:45+13', ?, ?, 'STOPPED_OPEN', 6, true)""")
                .params(Uuids.next(), people.named("Taker").value(), site.value())
                .update();

        assertThat(home(Role.OFFICE))
                .contains("Water lasts until", "Tue 6 Jan 2026 01:45</span> <strong>past</strong>")
                .doesNotContain("h left");
    }

    @Test
    void saysHowManySitesMustGoIntoTheWeekAndLeadsToTheRest() {
        for (int i = 0; i < 21; i++) {
            installs.commissioned(sites.named("Long overdue " + Uuids.next()), today().minusYears(40));
        }
        SiteId planned = sites.named("Longest but planned " + Uuids.next());
        installs.commissioned(planned, today().minusYears(41));
        jdbc.sql("insert into visits (id, site_id, kind, planned_on) values (?, ?, 'SERVICE', ?)")
                .params(Uuids.next(), planned.value(), today())
                .update();

        String page = home(Role.OFFICE);

        assertThat(page)
                .containsPattern("20 of \\S+ sites: not planned for this week first, then due longest")
                .contains("/due?state=PRESSING")
                .doesNotContain("Longest but planned");
        assertThat(get("/due?state=PRESSING", somebody(Role.OFFICE)))
                .contains("Long overdue", "Longest but planned")
                .contains("must go this week");
    }

    @Test
    void saysWhatBecameOfTheStepBefore() {
        assertThat(after(Saved.of("rounds.saved.mailsSent", 1200))).contains("<p>Mails sent: 1,200</p>");
        assertThat(after(Saved.said("By the creek's {far} side."))).contains("<p>By the creek&#39;s {far} side.</p>");
    }

    @Test
    void showsTheManagerWhatIsOverdueAndWhose() {
        installs.commissioned(sites.named("Neglected " + Uuids.next()), today().minusYears(30));

        assertThat(home(Role.MANAGER))
                .contains(
                        "Overdue, and whose it is",
                        "Longest past a valve-rubber change",
                        "Change delivery valve rubber");
    }

    @Test
    void showsWhoIsNotBack() {
        PersonId jonty = people.named("Jonty " + Uuids.next());
        jdbc.sql("""
                        insert into field_days (id, person_id, day, left_at, due_back_at)
                        values (?, ?, ?, now() - interval '9 hours', now() - interval '1 hour')""").params(Uuids.next(), jonty.value(), today()).update();

        assertThat(home(Role.OFFICE)).contains("Not back", "Jonty");
        assertThat(home(Role.MANAGER)).contains("Not back", "Jonty");
    }

    @Test
    void showsTheTechnicianWhereNext() {
        SiteId site = sites.named("Next stop " + Uuids.next());
        PersonId mere = people.named("Mere");
        var visit = Uuids.next();
        jdbc.sql(
                        "insert into visits (id, site_id, kind, planned_on, planned_from) values (?, ?, 'SERVICE', ?, '08:30')")
                .params(visit, site.value(), today())
                .update();
        jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (?, ?, true)")
                .params(visit, mere.value())
                .update();

        String page =
                get("/", new CurrentUser(Uuids.next(), mere.value(), "mere", "Mere", Set.of(Role.TECHNICIAN), null));

        assertThat(page).contains("Next", "08:30", "Next stop", "/visits/" + visit + "/record");
    }

    @Test
    void showsTheAdministratorWhatToMend() {
        assertThat(home(Role.ADMINISTRATOR))
                .contains("Keeps the lists from being right")
                .doesNotContain("Who rang");
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }

    private String home(Role role) {
        return get("/", somebody(role));
    }

    private static CurrentUser somebody(Role role) {
        return new CurrentUser(Uuids.next(), Uuids.next(), "login", "Somebody", Set.of(role), null);
    }

    private String after(Saved step) {
        var answer = mvc.get()
                .uri("/")
                .with(user(somebody(Role.OFFICE)))
                .requestAttr("saved", step)
                .exchange();
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private String get(String uri, CurrentUser who) {
        var answer = mvc.get().uri(uri).with(user(who)).exchange();
        assertThat(answer).hasStatusOk();
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }
}
