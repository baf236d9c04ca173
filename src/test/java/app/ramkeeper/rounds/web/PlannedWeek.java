package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.rounds.week.WorkingHours;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;

/** A week of its own with two technicians who start together and a site where one thing is overdue. */
@PageTest
abstract class PlannedWeek {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    WeekStore weeks;

    @Autowired
    WorkingHours hours;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    /** Each test plans a week of its own: a plan of another would be brought up to date, not made. */
    private static final AtomicInteger WEEK = new AtomicInteger();

    PersonId ana;
    PersonId ben;
    SiteId near;
    LocalDate monday;

    @BeforeEach
    void register() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(20 + WEEK.incrementAndGet());
        ana = people.named("Ana Weir");
        ben = people.named("Ben Sluice");
        people.startTogether(ana, ben);
        near = sites.named("Beck field " + Uuids.next().toString().substring(30));
        due(near);
    }

    void due(SiteId site) {
        InstallId install = installs.commissioned(site, monday.minusYears(3));
        jdbc.sql("""
                        update service_tasks set due_on = d.due, window_from = d.due - 30, window_until = d.due + 20, asleep_since = null, wakes_on = null
                        from (select k.id, case when k.code = 'CLEAN_STRAINER' then :due::date else :due::date + 900 end as due from task_kinds k) d
                        where install_id = :install and task_kind_id = d.id""")
                .param("due", monday.minusDays(30))
                .param("install", install.value())
                .update();
    }

    List<Stop> stopsAt(SiteId site) {
        return weeks.load(weeks.plan(monday).orElseThrow()).stops().stream()
                .filter(s -> s.siteId().equals(site.value()))
                .toList();
    }

    MockMvcRequestBuilder move(Stop stop, PersonId to, LocalDate day, int version) {
        return post("/rounds/" + monday + "/stops/" + stop.id() + "/move")
                .param("version", "" + version)
                .param("to", to.value() + "/" + day);
    }

    int version() {
        return weeks.plan(monday).orElseThrow().version();
    }

    /** The one stop there; where a site has a part for two people besides, take it by its crew. */
    Stop stopAt(SiteId site) {
        List<Stop> there = stopsAt(site);
        assertThat(there).hasSize(1);
        return there.get(0);
    }

    MockMvcRequestBuilder get(String path) {
        return mvc.get().uri(path).with(user(PageTest.As.who(ana, Role.OFFICE)));
    }

    MockMvcRequestBuilder post(String path) {
        return mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(ana, Role.OFFICE)))
                .with(csrf());
    }
}
