package app.ramkeeper.rounds.run;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.week.Preparation;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The optimiser as a job, and the mapping of a week to its problem and back. */
@PageTest
class WeekRunTests {

    private static final AtomicInteger WEEK = new AtomicInteger();

    @Autowired
    SolveWeek solve;

    @Autowired
    RunStore runs;

    @Autowired
    WeekStore weeks;

    @Autowired
    WeekEdits edits;

    @Autowired
    Preparation preparation;

    @Autowired
    Sites sites;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private PersonId ana;
    private LocalDate monday;

    @BeforeEach
    void makeWeek() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(80 + WEEK.incrementAndGet());
        ana = people.named("Ana Weir");
        people.startTogether(ana, people.named("Ben Sluice"));
        preparation.prepare(monday, ana.value());
        // what is due at other tests' sites
        jdbc.sql("delete from week_stops where plan_id = ?").param(plan().id()).update();
    }

    @Test
    void sameSeedAndStepsGiveTheSamePlan() {
        for (int i = 0; i < 14; i++) {
            add("Field " + i, -45.0 + 0.02 * i, 168.5 + 0.03 * (i % 5));
        }
        List<String> first = planned(run(7));
        List<String> second = planned(run(7));

        assertThat(first).hasSizeGreaterThan(10).isEqualTo(second);
    }

    @Test
    void aRunThatWasKilledIsTakenOverAndComesToTheSamePlan() {
        for (int i = 0; i < 10; i++) {
            add("Field " + i, -45.0 + 0.02 * i, 168.5 + 0.03 * (i % 5));
        }
        List<String> whole = planned(run(3));
        UUID killed = ask(3);
        jdbc.sql("update week_runs set state = 'WORKING', share = 0.4, visits_in = 2 where id = ?")
                .param(killed)
                .update();

        solve.run(killed);

        assertThat(runs.byId(killed).orElseThrow().state()).isEqualTo("DONE");
        assertThat(planned(killed)).isEqualTo(whole);
        int version = plan().version();
        solve.run(killed);
        assertThat(plan().version()).as("a run that has ended does nothing").isEqualTo(version);
    }

    @Test
    void aRunCountsWhatPressesButHasNoPositionFromTheFirst() {
        UUID lost = add("Lost field", -45.05, 168.60);
        jdbc.sql(
                        "update sites set latitude = null, longitude = null where id = (select site_id from week_stops where id = ?)")
                .param(lost)
                .update();
        add("Field", -45.02, 168.55);

        WeekRun run = runs.byId(run(1)).orElseThrow();

        assertThat(run.lateVisits()).as("said while it went").isEqualTo(1);
        assertThat(run.message()).endsWith("1 pressing visit left out.");
    }

    @Test
    void keepsEveryRuleAndSaysWhyWhatIsLeftOut() {
        UUID marked = add("Weedy field", -45.10, 168.75);
        UUID catchment = Uuids.next();
        jdbc.sql("insert into catchments (id, name, biosecurity) values (?, ?, 'WEED')")
                .params(catchment, "Weedy burn " + catchment)
                .update();
        jdbc.sql("update sites set catchment_id = ? where id = (select site_id from week_stops where id = ?)")
                .params(catchment, marked)
                .update();
        UUID agreed = add("Agreed field", -45.05, 168.60);
        jdbc.sql("update week_stops set fixed_on = ?, fixed_from = '13:30' where id = ?")
                .params(monday.plusDays(3), agreed)
                .update();
        UUID heavy = add("Heavy field", -45.04, 168.66);
        jdbc.sql("update week_stops set skills = '{LIFTING}', crew = 2 where id = ?")
                .param(heavy)
                .update();
        UUID closed = add("Lambing field", -45.03, 168.66);
        jdbc.sql(
                        "insert into closed_periods (id, site_id, from_date, until_date, reason) select gen_random_uuid(), site_id, ?, ?, 'lambing' from week_stops where id = ?")
                .params(monday, monday.plusDays(6), closed)
                .update();
        for (int i = 0; i < 8; i++) {
            add("Field " + i, -45.0 + 0.02 * i, 168.5 + 0.03 * (i % 5));
        }

        run(1);

        Week week = weeks.load(plan());
        assertThat(week.breaches()).isEmpty();
        assertThat(stop(agreed).day()).isEqualTo(monday.plusDays(3));
        assertThat(stop(heavy).placed()).isFalse();
        assertThat(stop(heavy).leftOut()).isNotBlank();
        assertThat(stop(closed).leftOut()).contains("lambing");
        Stop weedy = stop(marked);
        assertThat(week.stops().stream()
                        .filter(s -> s.placed()
                                && s.day().equals(weedy.day())
                                && s.personId().equals(weedy.personId())))
                .allMatch(s -> s.position() <= weedy.position());
    }

    @Test
    void leavesRoomForCallOutsUntilTheWeekIsPublished() {
        for (int i = 0; i < 40; i++) {
            add("Field " + i, -45.0 + 0.01 * i, 168.5 + 0.02 * (i % 5));
        }
        run(1);
        Week week = weeks.load(plan());
        assertThat(week.rounds().stream()
                        .map(r -> week.times(r.key()))
                        .filter(t -> !t.lines().isEmpty()))
                .isNotEmpty()
                .allMatch(times -> times.spare() >= 29);
    }

    @Test
    void givesTheVisitToWhoHadLessToDoOfLate() {
        // both start at the same depot, so that only the past weeks tell them apart
        jdbc.sql("""
                        with v as (insert into visits (id, site_id, kind, planned_on, minutes) values (gen_random_uuid(), ?, 'SERVICE', ?, 600) returning id)
                        insert into visit_people (visit_id, person_id, lead) select id, ?, true from v""")
                .params(sites.named("Long field").value(), monday.minusDays(5), ana.value())
                .update();
        UUID stop = add("Field", -45.05, 168.60);

        for (long seed = 1; seed <= 3; seed++) {
            run(seed);
            assertThat(stop(stop).personId()).isNotEqualTo(ana.value());
        }
    }

    @Test
    void givesTheVisitToWhoHasLessToDoThisWeek() {
        // both start at the same depot, and nobody had anything to do of late
        jdbc.sql("delete from visit_people where visit_id in (select id from visits where planned_on between ? and ?)")
                .params(monday.minusDays(28), monday.minusDays(1))
                .update();
        for (int day = 0; day < 3; day++) {
            jdbc.sql("update week_stops set minutes = 420, person_id = ?, day = ?, position = 1 where id = ?")
                    .params(ana.value(), monday.plusDays(day), add("Long field", -45.05, 168.62))
                    .update();
            jdbc.sql("insert into week_rounds (plan_id, person_id, day, locked) values (?, ?, ?, true)")
                    .params(plan().id(), ana.value(), monday.plusDays(day))
                    .update();
        }
        UUID stop = add("Field", -45.05, 168.60);

        for (long seed = 1; seed <= 3; seed++) {
            run(seed);
            assertThat(stop(stop).personId()).isNotNull().isNotEqualTo(ana.value());
        }
    }

    @Test
    void givesWhatStoodWithSomebodyWhoIsOnLeaveByNowToOthers() {
        UUID free = add("Field", -45.05, 168.60);
        UUID locked = add("Locked field", -45.06, 168.61);
        UUID excused = add("Excused field", -45.07, 168.62);
        for (UUID stop : List.of(free, locked, excused)) {
            edits.move(by(), stop, ana.value(), monday.plusDays(1), null, null);
        }
        edits.lock(by(), locked, true);
        edits.excuse(by(), excused, "comes in for this one");
        jdbc.sql("insert into person_leave (id, person_id, from_date, until_date) values (?, ?, ?, ?)")
                .params(Uuids.next(), ana.value(), monday, monday.plusDays(6))
                .update();

        run(1);

        assertThat(stop(free).personId()).isNotNull().isNotEqualTo(ana.value());
        assertThat(List.of(stop(locked), stop(excused)))
                .allMatch(s ->
                        ana.value().equals(s.personId()) && monday.plusDays(1).equals(s.day()));
    }

    @Test
    void leavesWithSomebodyOnLeaveWhatNobodyElseMayTake() {
        UUID heavy = add("Heavy field", -45.04, 168.66);
        edits.move(by(), heavy, ana.value(), monday.plusDays(1), null, null);
        jdbc.sql("update week_stops set skills = '{LIFTING}', crew = 2 where id = ?")
                .param(heavy)
                .update();
        jdbc.sql("insert into person_leave (id, person_id, from_date, until_date) values (?, ?, ?, ?)")
                .params(Uuids.next(), ana.value(), monday, monday.plusDays(6))
                .update();
        add("Field", -45.05, 168.60);

        run(1);

        assertThat(stop(heavy).personId()).isEqualTo(ana.value());
    }

    private By by() {
        return new By(monday, plan().version(), ana.value());
    }

    @Test
    void saysThatNobodyWorks() {
        add("Field", -45.0, 168.5);
        jdbc.sql("update people set left_on = ?").param(LocalDate.now(clock)).update();

        WeekRun run = runs.byId(run(1)).orElseThrow();

        assertThat(run.state()).isEqualTo("FAILED");
        assertThat(run.message()).contains("Nobody works");
    }

    @Test
    void takesTwoThousandCandidates() {
        jdbc.sql("""
                        with s as (insert into sites (id, name, latitude, longitude)
                            select gen_random_uuid(), 'Wide field ' || n, -45.5 + (n % 50) * 0.02, 168.2 + (n / 50) * 0.025 from generate_series(0, 1999) n returning id, name)
                        insert into week_stops (id, plan_id, site_id, kind, minutes, must, worth, why)
                        select gen_random_uuid(), ?, id, 'SERVICE', 45, false, 20, 'due' from s""").param(plan().id()).update();

        UUID run = ask(1, 200);
        solve.run(run);

        assertThat(runs.byId(run).orElseThrow().state()).isEqualTo("DONE");
        Week week = weeks.load(plan());
        assertThat(week.breaches()).isEmpty();
        assertThat(week.totals().in()).isGreaterThan(10);
        assertThat(week.leftOut()).allMatch(s -> s.leftOut() != null);
    }

    private UUID add(String name, double latitude, double longitude) {
        SiteId site = sites.named(name + " " + Uuids.next().toString().substring(28));
        jdbc.sql("update sites set latitude = ?, longitude = ? where id = ?")
                .params(latitude, longitude, site.value())
                .update();
        return edits.add(by(), site, 45, "look");
    }

    private UUID run(long seed) {
        UUID run = ask(seed);
        solve.run(run);
        return run;
    }

    private UUID ask(long seed) {
        return ask(seed, 800);
    }

    private UUID ask(long seed, long steps) {
        UUID id = Uuids.next();
        runs.add(id, plan().id(), "SCRATCH", seed, steps, plan().version(), ana.value(), "ada");
        return id;
    }

    private List<String> planned(UUID run) {
        assertThat(runs.byId(run).orElseThrow().state()).isEqualTo("DONE");
        return weeks.load(plan()).stops().stream()
                .filter(Stop::placed)
                .map(s -> s.id() + " " + s.personId() + " " + s.day() + " " + s.position())
                .sorted()
                .toList();
    }

    private Stop stop(UUID id) {
        return weeks.load(plan()).stop(id).orElseThrow();
    }

    private WeekPlan plan() {
        return weeks.plan(monday).orElseThrow();
    }
}
