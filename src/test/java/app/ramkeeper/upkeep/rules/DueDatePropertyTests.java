package app.ramkeeper.upkeep.rules;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.catalogue.Life;
import app.ramkeeper.catalogue.Schedule;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** What holds for every history. */
class DueDatePropertyTests {

    @Provide
    Arbitrary<LocalDate> days() {
        return Arbitraries.longs()
                .between(
                        LocalDate.of(1999, 1, 1).toEpochDay(),
                        LocalDate.of(2101, 12, 31).toEpochDay())
                .map(LocalDate::ofEpochDay);
    }

    @Provide
    Arbitrary<Work> works() {
        return Combinators.combine(
                        Arbitraries.longs().between(0, 4000),
                        Arbitraries.of(Work.Outcome.class),
                        Arbitraries.integers().between(0, 600),
                        Arbitraries.longs())
                .as((day, outcome, look, id) -> new Work(
                        new UUID(1, id),
                        LocalDate.of(2016, 1, 1).plusDays(day),
                        outcome,
                        false,
                        outcome == Work.Outcome.INSPECTED_GOOD
                                ? LocalDate.of(2016, 1, 1).plusDays(day + look)
                                : null,
                        outcome == Work.Outcome.COULD_NOT ? Waiting.PARTS : null,
                        null));
    }

    /** Times asleep that do not overlap, as the register keeps them. */
    @Provide
    Arbitrary<List<Idle>> idles() {
        return Arbitraries.integers().between(1, 200).list().ofMaxSize(8).map(lengths -> {
            List<Idle> idles = new ArrayList<>();
            LocalDate at = LocalDate.of(2016, 1, 1);
            for (int i = 0; i + 1 < lengths.size(); i += 2) {
                LocalDate from = at.plusDays(lengths.get(i));
                at = from.plusDays(lengths.get(i + 1));
                idles.add(new Idle(from, at, true));
            }
            return idles;
        });
    }

    private static Terms terms(Life life, int months, int days, int grace) {
        return new Terms(Schedule.INTERVAL, new Interval(months, days), life, 20, 30, grace, null);
    }

    @Property
    void orderInWhichReportsComeInDoesNotMatter(
            @ForAll @Size(max = 12) List<@From("works") Work> works, @ForAll long seed) {
        List<Work> shuffled = new ArrayList<>(works);
        Collections.shuffle(shuffled, new Random(seed));

        assertThat(Past.of(shuffled, null, LastDone.NEVER)).isEqualTo(Past.of(works, null, LastDone.NEVER));
    }

    @Property
    void oneMoreReportNeverMovesTheLastDayBack(
            @ForAll @Size(max = 12) List<@From("works") Work> works, @ForAll("works") Work late) {
        List<Work> more = new ArrayList<>(works);
        more.add(late);

        LocalDate before = Past.of(works, null, LastDone.NEVER).lastDoneOn();
        LocalDate after = Past.of(more, null, LastDone.NEVER).lastDoneOn();

        assertThat(before == null || (after != null && !after.isBefore(before))).isTrue();
    }

    @Property
    void onlyWhatWasDoneSetsTheLastDay(@ForAll @Size(max = 12) List<@From("works") Work> works) {
        List<Work> done = works.stream()
                .filter(work -> work.outcome() == Work.Outcome.DONE)
                .toList();

        Past past = Past.of(works, null, LastDone.NEVER);

        assertThat(past.lastDoneOn())
                .isEqualTo(Past.of(done, null, LastDone.NEVER).lastDoneOn());
    }

    @Property
    void eachForecastIsOneAdditionToTheLastDay(
            @ForAll("days") LocalDate last, @ForAll @IntRange(min = 1, max = 60) int months) {
        List<LocalDate> forecast =
                DueDate.forecast(terms(Life.CALENDAR, months, 0, 0), Standing.lastDone(last), List.of(), 6);

        for (int k = 1; k <= 6; k++) {
            assertThat(forecast.get(k - 1)).isEqualTo(last.plusMonths((long) k * months));
        }
    }

    @Property
    void sleepNeverBringsADateForward(
            @ForAll("idles") List<Idle> idles,
            @ForAll @IntRange(max = 2000) int sinceStart,
            @ForAll @IntRange(min = 1, max = 900) int days,
            @ForAll @IntRange(max = 30) int grace,
            @ForAll Life life) {
        Standing standing = Standing.lastDone(LocalDate.of(2016, 1, 1).plusDays(sinceStart));

        LocalDate awake =
                DueDate.of(terms(life, 0, days, grace), standing, List.of()).on();
        LocalDate slept =
                DueDate.of(terms(life, 0, days, grace), standing, idles).on();

        assertThat(slept).isAfterOrEqualTo(awake);
    }

    @Property
    void noDateFallsIntoASleepOrItsGrace(
            @ForAll("idles") List<Idle> idles,
            @ForAll @IntRange(max = 2000) int sinceStart,
            @ForAll @IntRange(min = 1, max = 900) int days,
            @ForAll @IntRange(max = 30) int grace) {
        Standing standing = Standing.lastDone(LocalDate.of(2016, 1, 1).plusDays(sinceStart));

        LocalDate due = DueDate.of(terms(Life.CALENDAR, 0, days, grace), standing, idles)
                .on();

        assertThat(idles)
                .noneMatch(idle ->
                        !due.isBefore(idle.from()) && due.isBefore(idle.until().plusDays(grace)));
    }

    @Property
    void runningLifeCountsExactlyTheDaysAwake(
            @ForAll("idles") List<Idle> idles,
            @ForAll @IntRange(max = 1000) int sinceStart,
            @ForAll @IntRange(min = 1, max = 900) int days) {
        LocalDate last = LocalDate.of(2016, 1, 1).plusDays(sinceStart);

        LocalDate due = RunningDays.after(last, last.plusDays(days), idles);

        long awake = last.datesUntil(due)
                .filter(day ->
                        idles.stream().noneMatch(idle -> !day.isBefore(idle.from()) && day.isBefore(idle.until())))
                .count();
        assertThat(awake).isEqualTo(days);
    }

    @Property
    void conditionNeverPutsADateOff(
            @ForAll("days") LocalDate last,
            @ForAll @IntRange(min = 1, max = 60) int months,
            @ForAll @IntRange(min = 1, max = 2000) int since,
            @ForAll @IntRange(max = 900) int within) {
        Terms terms = terms(Life.CALENDAR, months, 0, 0);
        Standing standing = Standing.lastDone(last);
        LocalDate noticed = last.plusDays(since);

        LocalDate due = DueDate.of(terms, standing.broughtForward(noticed, noticed.plusDays(within)), List.of())
                .on();

        assertThat(due).isBeforeOrEqualTo(DueDate.of(terms, standing, List.of()).on());
        assertThat(due).isBeforeOrEqualTo(noticed.plusDays(within));
    }

    @Property
    void seasonComesOnceAYearOnItsDay(
            @ForAll("days") LocalDate last,
            @ForAll @IntRange(min = 1, max = 12) int month,
            @ForAll @IntRange(min = 1, max = 28) int day,
            @ForAll @IntRange(max = 120) int early) {
        Terms terms = new Terms(Schedule.SEASON, Interval.NONE, Life.CALENDAR, early, 14, 0, MonthDay.of(month, day));

        LocalDate due = DueDate.of(terms, Standing.lastDone(last), List.of()).on();

        assertThat(MonthDay.from(due)).isEqualTo(MonthDay.of(month, day));
        assertThat(due.minusDays(early)).as("its window had not opened").isAfter(last);
        assertThat(due.minusYears(1).minusDays(early)).as("the one before had").isBeforeOrEqualTo(last);
    }

    @Property
    void everyTaskHasExactlyOneStateOnEveryDay(
            @ForAll("days") LocalDate due, @ForAll @IntRange(max = 400) int offset, @ForAll DoneBy doneBy) {
        DueDate date = new DueDate(due, due.minusDays(20), due.plusDays(30));
        LocalDate today = due.minusDays(200).plusDays(offset);

        TaskState state = TaskState.of(doneBy, LastDone.KNOWN, date, null, null, today);

        assertThat(state == TaskState.OVERDUE).isEqualTo(doneBy == DoneBy.US && today.isAfter(due.plusDays(30)));
        assertThat(state == TaskState.NOT_YET).isEqualTo(doneBy == DoneBy.US && today.isBefore(due.minusDays(20)));
    }
}
