package app.ramkeeper.rounds.run;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.solver.Evenness;
import app.ramkeeper.rounds.solver.Job;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.PlanCheck;
import app.ramkeeper.rounds.solver.Problem;
import app.ramkeeper.rounds.solver.Round;
import app.ramkeeper.rounds.week.Drive;
import app.ramkeeper.rounds.week.Hours.Window;
import app.ramkeeper.rounds.week.RoundKey;
import app.ramkeeper.rounds.week.Rules;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekStore.Placing;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A week as the optimiser's problem, and its answer back.
 *
 * <p>Rounds that are locked, past or under way are not in it, nor is what the office has taken out. What stands in a round of somebody
 * who is away by now goes to others, unless nobody may take it. Costs are minutes of
 * driving. The break is taken out of the day: after noon the optimiser's clock runs behind the real one by the break, so
 * windows after noon are moved by it.
 *
 * <p>Soft goals with a place here: lateness (the prize of leaving out, and a price that grows by the day), travel, who knows the
 * site, who had less to do of late, equal hours within the week, few rounds, an early end of the day, clustering (what the weeks
 * ahead brought forward has a higher prize).
 */
final class WeekProblem {

    /** Out of a marked catchment nobody drives to a clean one on the same day. */
    private static final double NEVER = 1e5;

    private static final double USE_OF_A_DAY = 10;
    private static final double STRANGER = 4;

    /** What each minute away costs besides: of two orders that drive alike, the one that waits less. */
    private static final double HOME_EARLY = 0.02;

    /** Twice what it costs if of two people one has a full week and the other none. */
    private static final double EVEN = 300;

    private static final double PAIR_NOT_NEEDED = 5;
    private static final double STAY = 25;

    /** What a visit costs more with whoever had most to do of late than with whoever had least. */
    private static final double FAIR = 6;

    /** From scratch: in half a minute a search this warm finds better weeks than a hotter one (ops/bench/RESULTS.md). */
    private static final double WARM = 0.3;

    /** So that little moves. */
    private static final double BARELY_WARM = 0.02;

    private final Week week;
    private final boolean lightly;
    private final long room;
    private final Map<UUID, Double> burden;
    private final List<TechDay> rounds = new ArrayList<>();
    private final List<Stop> stops = new ArrayList<>();
    private final List<Placing> untouched = new ArrayList<>();
    private final Set<RoundKey> open = new HashSet<>();
    private final LocalDate today;
    private final Problem problem;
    private final Plan start;

    WeekProblem(Week week, LocalDate today, boolean lightly, Duration callOutRoom, Map<UUID, Double> burden) {
        this.week = week;
        this.lightly = lightly;
        this.today = today;
        this.burden = burden;
        this.room = week.plan().firstPublishedAt() == null ? callOutRoom.toMinutes() : 0;
        Set<RoundKey> left = new HashSet<>();
        week.rounds().stream()
                .filter(r -> !r.works() || r.locked() || !r.day().isAfter(today))
                .forEach(r -> left.add(r.key()));
        Built built = build(left);
        // A round that somebody has locked together against the rules stays as it is.
        Set<RoundKey> odd = built.brokenLocks();
        if (!odd.isEmpty()) {
            left.addAll(odd);
            built = build(left);
        }
        this.problem = built.problem;
        this.start = built.start();
    }

    Problem problem() {
        return problem;
    }

    Plan start() {
        return start;
    }

    /** How warm the search for this week begins, for {@link app.ramkeeper.rounds.solver.Search#improve}. */
    double warmth() {
        return lightly ? BARELY_WARM : WARM;
    }

    /** The answer as places of the week, with what was not touched. */
    List<Placing> placings(Plan plan) {
        List<Placing> all = new ArrayList<>(untouched);
        for (int r = 0; r < plan.rounds().length; r++) {
            int[] order = plan.rounds()[r];
            for (int k = 0; k < order.length; k++) {
                TechDay round = rounds.get(r);
                all.add(new Placing(stops.get(order[k]).id(), round.personId(), round.day(), k + 1));
            }
        }
        return all;
    }

    private Built build(Set<RoundKey> left) {
        rounds.clear();
        stops.clear();
        untouched.clear();
        week.rounds().stream().filter(r -> !left.contains(r.key())).forEach(rounds::add);
        open.clear();
        rounds.forEach(round -> open.add(round.key()));
        // in an order of their own, so that a plan from scratch does not hang on where everything stands now
        List<Stop> ordered =
                week.stops().stream().sorted(Comparator.comparing(Stop::id)).toList();
        for (Stop stop : ordered) {
            RoundKey at = keyOf(stop);
            if (at != null && (!open.contains(at) || stop.over()) && !leftBehind(stop, at)) {
                untouched.add(new Placing(stop.id(), at.person(), at.day(), Objects.requireNonNull(stop.position())));
            } else if (!stop.over() && stop.setAside() == null && stop.where() != null) {
                stops.add(stop);
            }
        }
        return new Built();
    }

    /** Planned for somebody who does not work that day after all; what the office has locked there or given a reason for stays. */
    private boolean leftBehind(Stop stop, RoundKey at) {
        boolean gone = week.round(at.person(), at.day())
                .filter(round ->
                        !round.works() && !round.locked() && round.day().isAfter(today))
                .isPresent();
        return gone
                && !stop.over()
                && !stop.locked()
                && stop.excuse() == null
                && rounds.stream().anyMatch(round -> week.drive().rules().whyNot(stop, round) == null);
    }

    static @Nullable RoundKey keyOf(Stop stop) {
        return stop.personId() == null || stop.day() == null ? null : new RoundKey(stop.personId(), stop.day());
    }

    /** One mapping. */
    private final class Built {
        private final Problem problem;
        private final Map<RoundKey, Integer> roundOf = new HashMap<>();

        Built() {
            for (int r = 0; r < rounds.size(); r++) {
                roundOf.put(rounds.get(r).key(), r);
            }
            List<Job> jobs = new ArrayList<>();
            for (int j = 0; j < stops.size(); j++) {
                jobs.add(job(j));
            }
            List<Position> ends = new ArrayList<>();
            List<Round> days = new ArrayList<>();
            for (int r = 0; r < rounds.size(); r++) {
                days.add(day(r, ends));
            }
            double[][] travel = travel(ends);
            problem = Problem.of(jobs, days, travel, travel, (job, round) -> price(stops.get(job), rounds.get(round)));
            problem.even(evenness());
            for (int j = 0; j < stops.size(); j++) {
                if (stops.get(j).locked() && keyOf(stops.get(j)) != null) {
                    problem.freeze(j);
                }
            }
        }

        /** Each technician's hours of the whole week, those too that are not the optimiser's to change. */
        private Evenness evenness() {
            List<UUID> people = week.rounds().stream()
                    .filter(TechDay::works)
                    .map(TechDay::personId)
                    .distinct()
                    .toList();
            Set<RoundKey> stays = untouched.stream()
                    .map(placing -> new RoundKey(placing.personId(), placing.day()))
                    .collect(Collectors.toSet());
            double[] busy = new double[people.size()];
            double[] available = new double[people.size()];
            for (TechDay day : week.rounds()) {
                int person = people.indexOf(day.personId());
                if (person >= 0 && day.works()) {
                    available[person] += Math.max(1, day.longest());
                }
                if (person >= 0 && stays.contains(day.key())) {
                    busy[person] += Math.max(0, week.times(day.key()).back() - day.from());
                }
            }
            int[] groupOf = rounds.stream()
                    .mapToInt(round -> people.indexOf(round.personId()))
                    .toArray();
            return new Evenness(groupOf, busy, available, EVEN);
        }

        private Round day(int r, List<Position> ends) {
            TechDay round = rounds.get(r);
            return new Round(
                    place(ends, Objects.requireNonNull(round.start())),
                    place(ends, Objects.requireNonNull(round.end())),
                    round.from(),
                    Math.max(round.from(), round.until() - round.breakDue() - roomOf(round)),
                    round.longest() - roomOf(round),
                    Double.POSITIVE_INFINITY,
                    r,
                    USE_OF_A_DAY,
                    HOME_EARLY);
        }

        /** For call-outs: no more than what is agreed leaves; on a day that one agreed job takes up nothing. */
        private long roomOf(TechDay round) {
            if (stops.stream().anyMatch(s -> round.day().equals(s.fixedOn()) && s.minutes() > round.longest() / 2)) {
                return 0;
            }
            List<Stop> agreed = week.stopsOf(round.key()).stream()
                    .filter(s -> round.day().equals(s.fixedOn()))
                    .toList();
            return agreed.isEmpty()
                    ? room
                    : Math.min(room, (long) week.drive().through(round, agreed).spare());
        }

        private int place(List<Position> ends, Position where) {
            if (!ends.contains(where)) {
                ends.add(where);
            }
            return stops.size() + ends.indexOf(where);
        }

        private double[][] travel(List<Position> ends) {
            int size = stops.size() + ends.size();
            double[][] travel = new double[size][size];
            for (int a = 0; a < size; a++) {
                for (int b = 0; b < size; b++) {
                    travel[a][b] = a == b ? 0 : leg(a, b, ends);
                }
            }
            return travel;
        }

        private double leg(int a, int b, List<Position> ends) {
            Position from = where(a, ends);
            Position to = where(b, ends);
            double minutes =
                    from.equals(to) ? 0 : week.drive().legs().between(from, to).minutes();
            if (a < stops.size() && b < stops.size()) {
                Stop before = stops.get(a);
                Stop next = stops.get(b);
                if (before.isMarked() && !next.isMarked()) {
                    return NEVER;
                }
                return Drive.cleans(before, next) ? minutes + Drive.CLEANING : minutes;
            }
            return minutes;
        }

        private Position where(int place, List<Position> ends) {
            return place < stops.size()
                    ? Objects.requireNonNull(stops.get(place).where())
                    : ends.get(place - stops.size());
        }

        private Job job(int j) {
            Stop stop = stops.get(j);
            double[] opens = new double[Math.max(1, rounds.size())];
            double[] closes = new double[opens.length];
            for (int r = 0; r < rounds.size(); r++) {
                double[] window = window(stop, rounds.get(r));
                opens[r] = window[0];
                closes[r] = window[1];
            }
            return new Job(j, stop.minutes(), 0, stop.worth(), opens, closes);
        }

        /** Places as they are now: in a plan from scratch only what is locked. What does not fit any more starts outside. */
        Plan start() {
            List<List<Stop>> lists = new ArrayList<>();
            rounds.forEach(r -> lists.add(new ArrayList<>()));
            for (Stop stop : stops) {
                RoundKey at = keyOf(stop);
                if (roundOf.containsKey(at) && (lightly || stop.locked())) {
                    lists.get(Objects.requireNonNull(roundOf.get(at))).add(stop);
                }
            }
            int[][] placed = new int[rounds.size()][];
            for (int r = 0; r < rounds.size(); r++) {
                List<Stop> list = lists.get(r);
                list.sort(Comparator.comparing(Stop::position));
                placed[r] = numbers(list);
                while (!sound(placed[r], r)) {
                    Stop out = list.stream()
                            .filter(s -> !s.locked())
                            .min(Comparator.comparingDouble(Stop::worth))
                            .orElse(null);
                    if (out == null) {
                        break;
                    }
                    list.remove(out);
                    placed[r] = numbers(list);
                }
            }
            Set<Integer> in = new HashSet<>();
            for (int[] round : placed) {
                Arrays.stream(round).forEach(in::add);
            }
            List<Integer> out = java.util.stream.IntStream.range(0, stops.size())
                    .filter(j -> !in.contains(j))
                    .boxed()
                    .toList();
            return new Plan(placed, out, 0);
        }

        private int[] numbers(List<Stop> list) {
            return list.stream().mapToInt(stops::indexOf).toArray();
        }

        /** Rounds whose locked visits alone break a rule already. */
        Set<RoundKey> brokenLocks() {
            Set<RoundKey> broken = new HashSet<>();
            for (int r = 0; r < rounds.size(); r++) {
                RoundKey key = rounds.get(r).key();
                List<Stop> locked = stops.stream()
                        .filter(s -> s.locked() && key.equals(keyOf(s)))
                        .sorted(Comparator.comparing(Stop::position))
                        .toList();
                if (!sound(numbers(locked), r)) {
                    broken.add(key);
                }
            }
            return broken;
        }

        private boolean sound(int[] jobs, int round) {
            int[][] alone = new int[rounds.size()][0];
            alone[round] = jobs;
            Set<Integer> in = new HashSet<>(Arrays.stream(jobs).boxed().toList());
            List<Integer> out = java.util.stream.IntStream.range(0, stops.size())
                    .filter(j -> !in.contains(j))
                    .boxed()
                    .toList();
            return PlanCheck.of(problem, new Plan(alone, out, 0)).sound();
        }
    }

    /** Earliest and latest start on the optimiser's clock; closed if the latest is the earlier. */
    private double[] window(Stop stop, TechDay round) {
        Rules rules = week.drive().rules();
        Window longest = rules.hours().on(stop.siteId(), round.day()).stream()
                .max(Comparator.comparingInt(w -> w.until() - w.from()))
                .orElse(null);
        if (longest == null) {
            return new double[] {1, 0};
        }
        double opens = longest.from();
        double closes = longest.until() - stop.minutes();
        if (stop.fixedFrom() != null && round.day().equals(stop.fixedOn())) {
            opens = Math.max(opens, stop.fixedFrom().toSecondOfDay() / 60.0);
            closes = Math.min(closes, stop.fixedFrom().toSecondOfDay() / 60.0 + Drive.PUNCTUAL);
        }
        int rest = round.breakDue();
        if (opens >= TechDay.NOON) {
            return new double[] {opens - rest, closes - rest};
        }
        if (closes > TechDay.NOON) {
            closes = Math.max(closes - rest, TechDay.NOON - 1);
        }
        return new double[] {opens, closes};
    }

    private double price(Stop stop, TechDay round) {
        if (week.drive().rules().whyNot(stop, round) != null) {
            return Double.POSITIVE_INFINITY;
        }
        double price = stop.waiting(week.plan().monday(), round.day());
        if (stop.lastTechnician() != null && !stop.lastTechnician().equals(round.personId())) {
            price += STRANGER;
        }
        price += FAIR * burden.getOrDefault(round.personId(), 0.0);
        if (stop.crew() == 1 && round.crew() > 1) {
            price += PAIR_NOT_NEEDED;
        }
        if (lightly && open.contains(keyOf(stop)) && !round.key().equals(keyOf(stop))) {
            price += STAY;
        }
        return price;
    }

    /** The stop of a job. */
    Stop stop(int job) {
        return stops.get(job);
    }

    boolean isEmpty() {
        return stops.isEmpty() || rounds.isEmpty();
    }

    /** Ids of stops that the optimiser could move. */
    Set<UUID> movable() {
        Set<UUID> ids = new HashSet<>();
        stops.forEach(s -> ids.add(s.id()));
        return ids;
    }
}
