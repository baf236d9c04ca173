package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.rounds.week.Openings;
import app.ramkeeper.rounds.week.Preparation;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.io.UnsupportedEncodingException;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MockMvcTester;

/** Visits of a job in the week: what is on hold stays out, and nobody commissions what is not installed. */
@PageTest
class WorksInWeekTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    FieldPeople people;

    @Autowired
    Preparation preparation;

    @Autowired
    WeekEdits edits;

    @Autowired
    WeekStore weeks;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private PersonId ana;
    private LocalDate monday;
    private UUID job;

    @BeforeEach
    void job() {
        signIn();
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(76);
        ana = people.named("Ana Weir");
        people.startTogether(ana);
        SiteId site = sites.named("Top block");
        job = Uuids.next();
        jdbc.sql("""
                        insert into quotes (id, number, title, customer_name, place, created_at, created_by)
                        values (?, ?, 'Pump for the top block', 'Mo', 'Top block', now(), 'ada')""").params(job, "Q-" + job.toString().substring(28)).update();
        UUID customer = Uuids.next();
        jdbc.sql("insert into customers (id, name) values (?, 'Mo')")
                .param(customer)
                .update();
        UUID installation = visit(site, "INSTALLATION", 240);
        UUID commissioning = visit(site, "COMMISSIONING", 120);
        jdbc.sql("""
                        insert into jobs (id, revision, at, customer_id, site_id, installation_visit, commissioning_visit) values (?, 1, now(), ?, ?, ?, ?)""")
                .params(job, customer, site.value(), installation, commissioning)
                .update();
        jdbc.sql("insert into job_phases (id, job_id, position, kind, name) values (?, ?, 1, 'DIG', 'Dig')")
                .params(Uuids.next(), job)
                .update();
    }

    private UUID visit(SiteId site, String kind, int minutes) {
        UUID id = Uuids.next();
        jdbc.sql("insert into visits (id, site_id, kind, minutes) values (?, ?, ?, ?)")
                .params(id, site.value(), kind, minutes)
                .update();
        return id;
    }

    @Test
    void theStopsOfAJobSayWhatTheyAre() {
        preparation.prepare(monday, null);
        assertThat(stop("INSTALLATION").why())
                .matches("installation of quote Q-.*, Pump for the top block, planned without a day");
        assertThat(stop("COMMISSIONING").why()).startsWith("commissioning of quote Q-");
        assertThat(get("/rounds/" + monday)).contains("Pump for the top block");
    }

    @Test
    void aJobOnHoldStaysOutWithItsReason() {
        hold("Rain, the track is soft");
        preparation.prepare(monday, null);
        String words = "the job is on hold: Rain, the track is soft";
        Stop installation = stop("INSTALLATION");
        assertThat(new Openings(week(), monday).whyLeftOut(installation)).isEqualTo(words);
        assertThat(new Openings(week(), monday).best(installation, 99))
                .isNotEmpty()
                .allSatisfy(o -> assertThat(o.breaks()).contains(words));
        assertThat(get("/rounds/" + monday)).contains(words);
        assertThat(get("/rounds/" + monday + "/stops/" + installation.id())).contains(words);

        hold(null);
        assertThat(new Openings(week(), monday).whyLeftOut(stop("INSTALLATION")))
                .as("at once")
                .doesNotContain("on hold");
    }

    @Test
    void aCommissioningComesAfterItsInstallation() {
        preparation.prepare(monday, null);
        String none = "the installation comes first, and has no day yet";
        assertThat(new Openings(week(), monday).whyLeftOut(stop("COMMISSIONING")))
                .isEqualTo(none);
        move("COMMISSIONING", 1);
        assertThat(week().openBreaches())
                .filteredOn(b -> b.stop().kind().equals("COMMISSIONING"))
                .singleElement()
                .matches(b -> b.words().equals(none));

        move("INSTALLATION", 2);
        assertThat(week().openBreaches())
                .filteredOn(b -> b.stop().kind().equals("COMMISSIONING"))
                .singleElement()
                .matches(b -> b.words()
                        .equals("the installation comes first, and that is on " + Times.day(monday.plusDays(2))));
        assertThat(week().with(java.util.List.of()).drive().rules().worksKeepOut(stop("COMMISSIONING")))
                .as("in another arrangement of the same week")
                .isEqualTo(none);

        move("COMMISSIONING", 3);
        assertThat(week().openBreaches()).noneMatch(b -> b.stop().kind().equals("COMMISSIONING"));

        jdbc.sql("update visits set state = 'DONE' where id = ?")
                .param(stop("INSTALLATION").visitId())
                .update();
        move("COMMISSIONING", 1);
        assertThat(week().openBreaches())
                .as("what is installed waits for nothing")
                .noneMatch(b -> b.stop().kind().equals("COMMISSIONING"));
    }

    private void hold(@Nullable String why) {
        jdbc.sql(
                        "update job_phases set held_because = :why, held_since = case when :why::text is null then null else current_date end where job_id = :job")
                .param("why", why)
                .param("job", job)
                .update();
    }

    private void move(String kind, int day) {
        By by = new By(monday, weeks.plan(monday).orElseThrow().version(), ana.value());
        edits.move(by, stop(kind).id(), ana.value(), monday.plusDays(day), null, null);
    }

    private Week week() {
        return weeks.load(monday);
    }

    private Stop stop(String kind) {
        UUID visit = jdbc.sql(
                        "select case when :kind = 'INSTALLATION' then installation_visit else commissioning_visit end from jobs where id = :job")
                .param("kind", kind)
                .param("job", job)
                .query(UUID.class)
                .single();
        return week().stops().stream()
                .filter(s -> visit.equals(s.visitId()))
                .findFirst()
                .orElseThrow();
    }

    private String get(String path) {
        var page = mvc.get()
                .uri(path)
                .with(user(PageTest.As.who(ana, Role.OFFICE)))
                .exchange()
                .getResponse();
        signIn();
        try {
            return page.getContentAsString();
        } catch (UnsupportedEncodingException never) {
            throw new IllegalStateException(never);
        }
    }

    private static void signIn() {
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("ada", null, "ROLE_OFFICE", "ROLE_TECHNICIAN"));
    }
}
