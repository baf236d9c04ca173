package app.ramkeeper.rounds.web;

import app.ramkeeper.rounds.week.DayTimes;
import app.ramkeeper.rounds.week.DayTimes.Breach;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A week as its page shows it: a page of the notebook a technician, a column a day.
 *
 * @param keptOut why works keep a visit out of the week, by stop
 */
public record WeekView(
        WeekPlan plan,
        List<Page> pages,
        List<String> nowhere,
        List<Stop> leftOut,
        List<Breach> breaches,
        Week.Totals totals,
        Map<UUID, String> keptOut) {

    /** A technician's page. */
    public record Page(UUID person, String name, List<Column> days, double drive, boolean locked) {}

    /** A day of a page; without a round where the person does not work. */
    public record Column(LocalDate day, @Nullable TechDay round, DayTimes times, boolean past) {}

    static WeekView of(Week week, LocalDate today) {
        Map<UUID, List<TechDay>> byPerson = new LinkedHashMap<>();
        week.rounds()
                .forEach(r -> byPerson.computeIfAbsent(r.personId(), p -> new ArrayList<>())
                        .add(r));
        List<LocalDate> days = week.plan().days().stream()
                .filter(day -> day.getDayOfWeek().getValue() < 6
                        || week.rounds().stream().anyMatch(r -> r.day().equals(day)))
                .toList();
        List<Page> pages = byPerson.entrySet().stream()
                .map(e -> page(week, e.getKey(), e.getValue(), days, today))
                .toList();
        return new WeekView(
                week.plan(), pages, week.nowhere(), week.leftOut(), week.openBreaches(), week.totals(), keptOut(week));
    }

    /** What the works that a visit belongs to keep out of the week, and why. */
    private static Map<UUID, String> keptOut(Week week) {
        Map<UUID, String> all = new HashMap<>();
        week.leftOut().forEach(stop -> {
            String why = week.drive().rules().worksKeepOut(stop);
            if (why != null) {
                all.put(stop.id(), why);
            }
        });
        return all;
    }

    private static Page page(Week week, UUID person, List<TechDay> rounds, List<LocalDate> days, LocalDate today) {
        List<Column> columns = new ArrayList<>();
        double drive = 0;
        for (LocalDate day : days) {
            TechDay round =
                    rounds.stream().filter(r -> r.day().equals(day)).findFirst().orElse(null);
            DayTimes times = round == null ? DayTimes.empty() : week.times(round.key());
            drive += times.drive();
            columns.add(new Column(day, round, times, day.isBefore(today)));
        }
        return new Page(
                person, rounds.get(0).name(), columns, drive, rounds.stream().allMatch(TechDay::locked));
    }
}
