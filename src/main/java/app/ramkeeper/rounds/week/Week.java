package app.ramkeeper.rounds.week;

import app.ramkeeper.rounds.week.DayTimes.Breach;
import app.ramkeeper.rounds.week.OpenCalls.OpenCall;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** A week as it stands: its stops, everybody's days, and the means to drive a round. */
public final class Week {

    private final WeekPlan plan;
    private final List<Stop> stops;
    private final Map<RoundKey, TechDay> rounds = new LinkedHashMap<>();
    private final List<String> nowhere;
    private final Map<UUID, OpenCall> calls;
    private final Drive drive;
    private final Map<RoundKey, List<Stop>> byRound;
    private final Map<RoundKey, DayTimes> times = new HashMap<>();

    Week(WeekPlan plan, List<Stop> stops, List<TechDay> rounds, Drive drive) {
        this(plan, stops, rounds, List.of(), Map.of(), drive);
    }

    Week(
            WeekPlan plan,
            List<Stop> stops,
            List<TechDay> rounds,
            List<String> nowhere,
            Map<UUID, OpenCall> calls,
            Drive drive) {
        this.nowhere = nowhere;
        this.calls = calls;
        this.plan = plan;
        this.stops = stops;
        this.drive = drive.where(stops);
        rounds.forEach(round -> this.rounds.put(round.key(), round));
        this.byRound = stops.stream()
                .filter(Stop::placed)
                .sorted(Comparator.comparing(Stop::position))
                .collect(Collectors.groupingBy(Week::keyOf));
    }

    private static RoundKey keyOf(Stop stop) {
        return new RoundKey(
                java.util.Objects.requireNonNull(stop.personId()), java.util.Objects.requireNonNull(stop.day()));
    }

    /** The same week with its stops placed otherwise; what is not named stands in no round, what is over stays. */
    public Week with(List<WeekStore.Placing> placings) {
        Map<UUID, WeekStore.Placing> at =
                placings.stream().collect(Collectors.toMap(WeekStore.Placing::stopId, p -> p));
        List<Stop> placed = stops.stream()
                .map(stop -> {
                    WeekStore.Placing p = at.get(stop.id());
                    return stop.over()
                            ? stop
                            : p == null
                                    ? Stops.placed(stop, null, null, null)
                                    : Stops.placed(stop, p.personId(), p.day(), p.position());
                })
                .toList();
        return new Week(plan, placed, rounds(), nowhere, calls, drive);
    }

    public WeekPlan plan() {
        return plan;
    }

    public List<Stop> stops() {
        return stops;
    }

    public List<TechDay> rounds() {
        return List.copyOf(rounds.values());
    }

    /** Who has neither depot nor place of their own, and so no rounds. */
    public List<String> nowhere() {
        return nowhere;
    }

    /** What nobody has closed yet of what was rung about, by site. */
    public Map<UUID, OpenCall> calls() {
        return calls;
    }

    public Drive drive() {
        return drive;
    }

    public Optional<TechDay> round(UUID person, LocalDate day) {
        return Optional.ofNullable(rounds.get(new RoundKey(person, day)));
    }

    public Optional<Stop> stop(UUID id) {
        return stops.stream().filter(stop -> stop.id().equals(id)).findFirst();
    }

    public List<Stop> stopsOf(RoundKey key) {
        return byRound.getOrDefault(key, List.of());
    }

    /** The round driven through. */
    public DayTimes times(RoundKey key) {
        return times.computeIfAbsent(key, k -> {
            TechDay round = rounds.get(k);
            return round == null ? DayTimes.empty() : drive.through(round, stopsOf(k));
        });
    }

    /** What is not in any round, the dearest first. */
    public List<Stop> leftOut() {
        return stops.stream()
                .filter(stop -> !stop.placed() && !stop.over())
                .sorted(Comparator.comparing(Stop::worth).reversed())
                .toList();
    }

    /** Every rule that the plan breaks. */
    public List<Breach> breaches() {
        List<Breach> all = new ArrayList<>();
        for (TechDay round : rounds.values()) {
            times(round.key()).breaches().stream().filter(b -> !b.stop().over()).forEach(all::add);
        }
        stops.stream()
                .filter(stop -> !stop.placed() && !stop.over() && stop.fixedOn() != null && stop.setAside() == null)
                .map(stop -> new Breach(stop, stop.held() + ", but in no round"))
                .forEach(all::add);
        return all;
    }

    /** Those that nobody has given a reason for. */
    public List<Breach> openBreaches() {
        return breaches().stream().filter(Breach::open).toList();
    }

    /** The sum over all rounds. */
    public Totals totals() {
        double minutes = 0;
        double metres = 0;
        double work = 0;
        int in = 0;
        int used = 0;
        int late = 0;
        for (TechDay round : rounds.values()) {
            DayTimes day = times(round.key());
            minutes += day.drive();
            metres += day.metres();
            work += day.work();
            in += day.lines().size();
            used += day.lines().isEmpty() ? 0 : 1;
        }
        for (Stop stop : stops) {
            late += isLate(stop) ? 1 : 0;
        }
        return new Totals(in, leftOut().size(), used, minutes, metres, work, late);
    }

    private boolean isLate(Stop stop) {
        return stop.must() && !stop.placed() && !stop.over();
    }

    /**
     * What a plan comes to.
     *
     * @param pressingOut visits that should have gone into the week and did not
     */
    public record Totals(
            int in, int out, int rounds, double driveMinutes, double metres, double workMinutes, int pressingOut) {}
}
