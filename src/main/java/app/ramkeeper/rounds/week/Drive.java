package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.travel.Leg;
import app.ramkeeper.rounds.travel.Legs;
import app.ramkeeper.rounds.week.DayTimes.Breach;
import app.ramkeeper.rounds.week.DayTimes.Line;
import app.ramkeeper.visits.PlanVisit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Drives a round visit by visit, the plain way, sharing nothing with the optimiser: the page's times and the check before
 * publishing are these.
 */
public final class Drive {

    /** Cleaning boots and tools after a marked catchment; common practice, without source. */
    public static final int CLEANING = 20;

    /** How far from its agreed time a visit may start. */
    public static final int PUNCTUAL = PlanVisit.PUNCTUAL;

    private static final double SLACK = 0.5;

    private final Legs legs;
    private final Rules rules;

    public Drive(Legs legs, Rules rules) {
        this.legs = legs;
        this.rules = rules;
    }

    /** The same, where visits that others must wait for stand as in these stops. */
    Drive where(List<Stop> stops) {
        Rules there = rules.where(stops);
        return there == rules ? this : new Drive(legs, there);
    }

    public Rules rules() {
        return rules;
    }

    public Legs legs() {
        return legs;
    }

    /**
     * Drives the round; leaves as late as nobody notices it: back no later, no visit breaking more, no agreed time missed by more.
     * Only where the day would be too long does it leave later still, within what was agreed.
     */
    public DayTimes through(TechDay round, List<Stop> stops) {
        return through(round, stops, new Progress(0, 0));
    }

    /** How far a round has come: so many visits are behind it, and the next leg begins no earlier than now. */
    record Progress(int behind, int now) {}

    DayTimes through(TechDay round, List<Stop> stops, Progress progress) {
        if (stops.isEmpty()) {
            return DayTimes.empty();
        }
        Run first = new Run(round, stops, progress, round.from());
        int most = (int) first.lines.stream().mapToDouble(Line::waits).sum();
        Predicate<Run> harmless = run -> run.back <= first.back + 1e-9 && run.broken <= first.broken;
        Run best = latest(round, stops, progress, first, most, harmless.and(run -> run.late <= first.late + 1e-9));
        if (best.tooLong() > 0) {
            double later = Math.ceil(best.leaves + best.tooLong());
            Run shorter = later > round.from() + most ? best : new Run(round, stops, progress, later);
            best = harmless.test(shorter) ? shorter : best;
        }
        return best.done();
    }

    /** The latest leaving that does; what does not, does not later either. */
    private Run latest(TechDay round, List<Stop> stops, Progress progress, Run first, int most, Predicate<Run> does) {
        Run best = first;
        int low = 0;
        int high = most;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            Run later = new Run(round, stops, progress, round.from() + middle);
            if (does.test(later)) {
                low = middle;
                best = later;
            } else {
                high = middle - 1;
            }
        }
        return best;
    }

    /** One drive from one time of leaving. */
    private final class Run {
        private final TechDay round;
        private final List<Stop> stops;
        private final double leaves;
        private final List<Line> lines = new ArrayList<>();
        private final List<Breach> breaches = new ArrayList<>();
        private boolean paused;
        private double drive;
        private double metres;
        private double homeDrive;
        private double back;
        private double late;
        private int broken;

        Run(TechDay round, List<Stop> stops, Progress progress, double leaves) {
            this.round = round;
            this.stops = stops;
            this.leaves = leaves;
            this.paused = round.breakDue() == 0 || leaves >= TechDay.NOON;
            double now = leaves;
            Position at = round.start();
            Stop before = null;
            boolean restarted = round.lateAt() == null;
            for (int i = 0; i < stops.size(); i++) {
                if (!restarted && !stops.get(i).over()) {
                    now = Math.max(now, java.util.Objects.requireNonNull(round.lateAt()));
                    restarted = true;
                }
                now = visit(stops.get(i), before, at, i == progress.behind() ? Math.max(now, progress.now()) : now);
                before = stops.get(i);
                at = before.where() == null ? at : before.where();
            }
            Leg home = leg(at, round.end());
            homeDrive = home.minutes();
            drive += homeDrive;
            metres += home.metres();
            back = now + homeDrive;
            broken = breaches.size();
            wholeRound();
        }

        private double visit(Stop stop, @Nullable Stop before, @Nullable Position at, double now) {
            Leg leg = leg(at, stop.where());
            double clean = before != null && cleans(before, stop) ? CLEANING : 0;
            drive += leg.minutes();
            metres += leg.metres();
            double arrives = now + leg.minutes() + clean;
            double opens = opens(stop, arrives);
            double pause = 0;
            double starts = Math.max(arrives, opens);
            if (!paused && starts >= TechDay.NOON) {
                paused = true;
                pause = round.breakDue();
                starts = Math.max(opens, Math.max(arrives, TechDay.BREAK_FROM) + pause);
            }
            double ends = starts + stop.minutes();
            Line line = new Line(stop, leg.minutes(), clean, pause, arrives, starts, ends);
            lines.add(line);
            check(line, before);
            return ends;
        }

        /** When work can begin: the agreed time, else the window that is open or opens next. */
        private double opens(Stop stop, double arrives) {
            if (stop.fixedFrom() != null && round.day().equals(stop.fixedOn())) {
                return Times.of(stop.fixedFrom());
            }
            return rules.hours().on(stop.siteId(), round.day()).stream()
                    .filter(w -> w.until() - stop.minutes() >= arrives - SLACK)
                    .mapToDouble(Hours.Window::from)
                    .findFirst()
                    .orElse(arrives);
        }

        private void check(Line line, @Nullable Stop before) {
            Stop stop = line.stop();
            String never = rules.whyNot(stop, round);
            if (never != null) {
                breaches.add(new Breach(stop, never));
            } else if (rules.hours().on(stop.siteId(), round.day()).stream()
                    .noneMatch(w -> line.starts() >= w.from() - SLACK && line.ends() <= w.until() + SLACK)) {
                breaches.add(new Breach(
                        stop,
                        "work from " + Times.say(line.starts()) + " to " + Times.say(line.ends())
                                + " is outside the access hours"));
            }
            if (stop.fixedFrom() != null && round.day().equals(stop.fixedOn())) {
                int agreed = Times.of(stop.fixedFrom());
                late += Math.max(0, line.starts() - agreed);
                if (line.starts() > agreed + PUNCTUAL + SLACK) {
                    breaches.add(new Breach(
                            stop, "agreed for " + Times.say(agreed) + ", reached " + Times.say(line.starts())));
                }
            }
            if (before != null && before.isMarked() && !stop.isMarked()) {
                breaches.add(new Breach(
                        before,
                        "the catchment is marked (" + before.biosecurity().toLowerCase(java.util.Locale.UK)
                                + "): it must come last in the round"));
            }
        }

        private void wholeRound() {
            Stop last = stops.get(stops.size() - 1);
            if (round.away() != null) {
                return;
            }
            if (round.start() == null || round.end() == null) {
                breaches.add(new Breach(last, "the place where " + round.name() + " starts has no position"));
            }
            if (back > round.until() + SLACK) {
                breaches.add(new Breach(
                        last,
                        round.name() + " is back at " + Times.say(back) + ", the day ends at "
                                + Times.say(round.until())));
            }
            if (tooLong() > 0) {
                breaches.add(new Breach(
                        last,
                        "the day lasts " + Times.span(lasts()) + ", at most " + Times.span(round.longest())
                                + " are allowed"));
            }
        }

        /** From setting out to being back, without the break. */
        private double lasts() {
            boolean rested = paused && lines.stream().anyMatch(l -> l.pause() > 0);
            return back - leaves - (rested ? round.breakDue() : 0);
        }

        /** Minutes by which the day is longer than it may be; 0 if it is not. */
        private double tooLong() {
            double over = lasts() - round.longest();
            return over > SLACK ? over : 0;
        }

        private Leg leg(@Nullable Position from, @Nullable Position to) {
            return from == null || to == null || from.equals(to) ? new Leg(0, 0) : legs.between(from, to);
        }

        DayTimes done() {
            double work = lines.stream().mapToDouble(l -> l.stop().minutes()).sum();
            double spare = Math.max(0, Math.min(round.until() - back, round.longest() - lasts()));
            return new DayTimes(
                    leaves, List.copyOf(lines), homeDrive, back, drive, metres, work, spare, List.copyOf(breaches));
        }
    }

    /** True if boots and tools are cleaned between two visits: out of a marked catchment into another one. */
    public static boolean cleans(Stop before, Stop next) {
        return before.isMarked()
                && !(before.catchmentId() != null && before.catchmentId().equals(next.catchmentId()));
    }
}
