package app.ramkeeper.rounds.week;

import app.ramkeeper.rounds.week.DayTimes.Line;
import app.ramkeeper.rounds.week.Drive.Progress;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Finds where in a week a visit would go, and what that would do; or why it goes nowhere. */
public final class Openings {

    private final Week week;
    private final LocalDate notBefore;
    private final int now;

    /** Days before the given one are past. */
    public Openings(Week week, LocalDate notBefore) {
        this(week, notBefore, 0);
    }

    /** Days before the given one are past, and so is that day up to a minute of it. */
    public Openings(Week week, LocalDate notBefore, int now) {
        this.week = week;
        this.notBefore = notBefore;
        this.now = now;
    }

    /**
     * A place in a round.
     *
     * @param before the visit that would come after it; null for the last
     * @param adds minutes of driving it adds
     * @param costs the same with what the waiting until then costs, in minutes of driving
     * @param starts when work would start
     * @param back when the technician would be back
     */
    public record Opening(
            TechDay round,
            @Nullable Stop before,
            double adds,
            double costs,
            double starts,
            double back,
            List<String> breaks) {

        public String words() {
            return Effects.signed(adds) + " driving, starts " + Times.say(starts) + ", " + round.name() + " back "
                    + Times.say(back);
        }
    }

    /** The best places, at most one a round, those that break no rule first, then by what they cost. */
    public List<Opening> best(Stop stop, int most) {
        List<Opening> found = new ArrayList<>();
        for (TechDay round : week.rounds()) {
            if (!round.day().isBefore(notBefore) && round.away() == null) {
                Opening best = in(round, stop);
                if (best != null) {
                    found.add(best);
                }
            }
        }
        found.sort(Comparator.<Opening>comparingInt(o -> o.breaks().size()).thenComparingDouble(Opening::costs));
        return found.subList(0, Math.min(most, found.size()));
    }

    /** The best place in one round; null if the site has no position. */
    public @Nullable Opening in(TechDay round, Stop stop) {
        if (stop.where() == null) {
            return null;
        }
        List<Stop> there = week.stopsOf(round.key()).stream()
                .filter(s -> !s.id().equals(stop.id()))
                .toList();
        Progress progress = progress(round, there);
        DayTimes without = week.drive().through(round, there, progress);
        Opening best = null;
        for (int place = progress.behind(); place <= there.size(); place++) {
            Opening opening = at(round, stop, there, place, without, progress);
            if (best == null
                    || opening.breaks().size() < best.breaks().size()
                    || (opening.breaks().size() == best.breaks().size() && opening.costs() < best.costs() - 1e-9)) {
                best = opening;
            }
        }
        return best;
    }

    /** What is over, or has begun by the plan, is behind the round. */
    private Progress progress(TechDay round, List<Stop> there) {
        int passed = round.day().equals(notBefore) ? now : 0;
        int behind = (int) there.stream().filter(Stop::over).count();
        for (Line line : week.drive().through(round, there).lines()) {
            if (line.starts() < passed) {
                behind = Math.max(behind, there.indexOf(line.stop()) + 1);
            }
        }
        return new Progress(behind, passed);
    }

    private Opening at(TechDay round, Stop stop, List<Stop> there, int place, DayTimes without, Progress progress) {
        Stop here = Stops.placed(stop, round.personId(), round.day(), place + 1);
        List<Stop> with = new ArrayList<>(there);
        with.add(place, here);
        DayTimes times = week.drive().through(round, with, progress);
        Line line = Objects.requireNonNull(times.lineOf(stop.id()));
        List<String> old =
                without.breaches().stream().map(DayTimes.Breach::words).toList();
        List<String> fresh = times.breaches().stream()
                .map(DayTimes.Breach::words)
                .filter(words -> !old.contains(words))
                .distinct()
                .toList();
        double adds = times.drive() - without.drive();
        return new Opening(
                round,
                place == there.size() ? null : there.get(place),
                adds,
                adds + waiting(stop, round.day(), line.starts()),
                line.starts(),
                times.back(),
                fresh);
    }

    /** What a visit's waiting costs: of somebody without water by the hour, of others by the day. */
    private double waiting(Stop stop, LocalDate day, double starts) {
        if (!stop.kind().equals("CALL_OUT")) {
            return stop.waiting(week.plan().monday(), day);
        }
        return stop.worthADay() * (ChronoUnit.DAYS.between(notBefore, day) + (starts - now) / Times.DAY_LONG);
    }

    /** Why a visit is in no round, in words. */
    public String whyLeftOut(Stop stop) {
        if (stop.setAside() != null) {
            return "taken out by the office: " + stop.setAside();
        }
        String works = week.drive().rules().worksKeepOut(stop);
        if (works != null) {
            return works;
        }
        if (stop.where() == null) {
            return "the site has no position: put one into its register entry";
        }
        List<TechDay> rounds = week.rounds().stream()
                .filter(r -> !r.day().isBefore(notBefore) && r.away() == null)
                .toList();
        if (rounds.isEmpty()) {
            return "nobody works in what is left of the week";
        }
        Map<String, Integer> reasons = new LinkedHashMap<>();
        rounds.forEach(r -> {
            String why = week.drive().rules().whyNot(stop, r);
            if (why != null) {
                reasons.merge(why, 1, Integer::sum);
            }
        });
        if (reasons.values().stream().mapToInt(Integer::intValue).sum() == rounds.size()) {
            return never(stop, rounds, reasons);
        }
        List<Opening> best = best(stop, 1);
        if (best.isEmpty() || !best.get(0).breaks().isEmpty()) {
            return "no day has room for " + Times.span(stop.minutes()) + " there"
                    + (best.isEmpty()
                            ? ""
                            : "; the nearest, " + best.get(0).round().name() + " on "
                                    + Times.day(best.get(0).round().day()) + ", would break a rule: "
                                    + best.get(0).breaks().get(0));
        }
        Opening opening = best.get(0);
        return "would add " + Times.span(opening.adds()) + " of driving ("
                + opening.round().name() + ", " + Times.day(opening.round().day()) + ") for " + weight(stop);
    }

    private String weight(Stop stop) {
        if (stop.dueOn() == null) {
            return "a visit without a due task";
        }
        long days = ChronoUnit.DAYS.between(week.plan().sunday(), stop.dueOn());
        if (days > 13) {
            return "a task due in " + days / 7 + " weeks";
        }
        return (stop.dueOn().isBefore(notBefore)
                                && stop.dueOn().isBefore(week.plan().monday())
                        ? "a task due since "
                        : "a task due ")
                + Times.day(stop.dueOn(), week.plan().monday());
    }

    private static String never(Stop stop, List<TechDay> rounds, Map<String, Integer> reasons) {
        if (stop.crew() > 1 && rounds.stream().noneMatch(r -> r.crew() >= stop.crew())) {
            return "needs " + stop.crew() + " people and nobody rides along with anybody that week";
        }
        String most = reasons.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse("");
        return most + (reasons.size() > 1 ? ", and so on for every day of everybody" : "");
    }

    /** All rounds with the best place in each, for the form that moves a visit; those that break rules too. */
    public Map<UUID, List<Opening>> byPerson(Stop stop) {
        Map<UUID, List<Opening>> all = new LinkedHashMap<>();
        for (TechDay round : week.rounds()) {
            if (!round.day().isBefore(notBefore)) {
                Opening opening = in(round, stop);
                if (opening != null) {
                    all.computeIfAbsent(round.personId(), p -> new ArrayList<>())
                            .add(opening);
                }
            }
        }
        return all;
    }
}
