package app.ramkeeper.rounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.out.Publishing;
import app.ramkeeper.rounds.week.Preparation;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What is due where somebody agreed to a time: it goes along only where no agreed time is missed for it. */
@PageTest
class AgreedVisitsTests {

    @Autowired
    SolveWeek solve;

    @Autowired
    RunStore runs;

    @Autowired
    Publishing publishing;

    @Autowired
    Preparation preparation;

    @Autowired
    WeekStore weeks;

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

    private PersonId ana;
    private LocalDate monday;
    private LocalDate tuesday;
    private SiteId site;

    @BeforeEach
    void agree() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(70);
        tuesday = monday.plusDays(1);
        ana = people.named("Ana Weir");
        people.startTogether(ana);
        site = sites.named("Agreed field");
        InstallId install = installs.commissioned(site, monday.minusYears(3));
        // only the strainer is due, and that since a month
        jdbc.sql("""
                        update service_tasks t set asleep_since = null, wakes_on = null,
                          due_on = d.day, window_from = d.day - 10, window_until = d.day + 10
                        from (select st.id, :monday::date + case when k.code = 'CLEAN_STRAINER' then -30 else 900 end as day
                          from service_tasks st join task_kinds k on k.id = st.task_kind_id where st.install_id = :install) d where d.id = t.id""").param("monday", monday).param("install", install.value()).update();
        visit(site, LocalTime.of(9, 0));
        visit(sites.named("Next field"), LocalTime.of(10, 30));
    }

    @Test
    void whatHasRoomRidesAlong() {
        strainerTakes(20);

        prepare();

        assertThat(agreed().minutes()).isEqualTo(80);
        assertThat(apart()).isEmpty();
    }

    @Test
    void whatWouldMakeTheNextAgreedVisitLateGoesByItselfAndThePlanIsPublished() {
        strainerTakes(150);

        prepare();
        assertThat(agreed().minutes()).isEqualTo(60);
        assertThat(apart()).singleElement().satisfies(stop -> {
            assertThat(stop.minutes()).isEqualTo(150);
            assertThat(stop.must()).isTrue();
            assertThat(stop.why())
                    .contains("Clean strainer", "no room for it in the visit of ")
                    .doesNotContain("confirmed");
        });

        run();
        assertThat(weeks.load(plan()).breaches()).isEmpty();
        assertThat(agreed().day()).isEqualTo(tuesday);
        Stop placed = apart().get(0);
        assertThat(placed.placed()).isTrue();

        prepare();
        assertThat(apart())
                .as("brought up to date, it stays where it is")
                .singleElement()
                .satisfies(stop -> assertThat(List.of(stop.id(), stop.day(), stop.position()))
                        .isEqualTo(List.of(placed.id(), placed.day(), placed.position())));
        assertThat(publishing.publish(by())).contains("3 visits");
    }

    @Test
    void whatItWasItselfAskedForDoesNotMakeTheNextOneLateEither() {
        strainerTakes(150);
        jdbc.sql("""
                        insert into visit_tasks (visit_id, task_id, install_id, task_kind_id)
                        select v.id, t.id, t.install_id, t.task_kind_id from visits v join installs i on i.site_id = v.site_id
                          join service_tasks t on t.install_id = i.id and t.due_on < :monday
                        where v.site_id = :site""").param("monday", monday).param("site", site.value()).update();

        prepare();

        assertThat(agreed().minutes()).isEqualTo(60);
        assertThat(agreed().tooShort()).as("and the page says so").isTrue();
        run();
        assertThat(weeks.load(plan()).breaches()).isEmpty();
    }

    private void strainerTakes(int minutes) {
        jdbc.sql("update task_kinds set minutes = ? where code = 'CLEAN_STRAINER'")
                .param(minutes)
                .update();
    }

    private void visit(SiteId at, LocalTime from) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into visits (id, site_id, kind, planned_on, planned_from, minutes, answer)
                        values (?, ?, 'SERVICE', ?, ?, 60, 'CONFIRMED')""").params(id, at.value(), tuesday, from).update();
        jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (?, ?, true)")
                .params(id, ana.value())
                .update();
    }

    /** Without what is due at other tests' sites. */
    private void prepare() {
        preparation.prepare(monday, ana.value());
        jdbc.sql(
                        "delete from week_stops where plan_id = ? and site_id not in (select site_id from visits where planned_on = ?)")
                .params(plan().id(), tuesday)
                .update();
    }

    private void run() {
        UUID id = Uuids.next();
        runs.add(id, plan().id(), "SCRATCH", 1, 400, plan().version(), ana.value(), "ada");
        solve.run(id);
        assertThat(runs.byId(id).orElseThrow().state()).isEqualTo("DONE");
    }

    private Stop agreed() {
        return at(true).get(0);
    }

    private List<Stop> apart() {
        return at(false);
    }

    private List<Stop> at(boolean visit) {
        return weeks.load(plan()).stops().stream()
                .filter(s -> s.siteId().equals(site.value()) && visit == (s.fixedOn() != null))
                .toList();
    }

    private By by() {
        return new By(monday, plan().version(), ana.value());
    }

    private WeekPlan plan() {
        return weeks.plan(monday).orElseThrow();
    }
}
