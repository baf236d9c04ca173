package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Spreads named tasks over the coming weeks, each within its own window: what is due at one site goes together, what lies alone
 * goes where a neighbour is visited, and what a full week cannot take goes where there is room. Each move says why.
 */
final class Horizon {

    static final int WEEKS = 8;

    /** Driving that a visit adds, minutes; common practice, without source. */
    static final double DRIVE = 25;

    /** Nearer by less than this is not worth another week, km; our own judgement. */
    private static final double WORTH_KM = 5;

    private final LocalDate monday;
    private final List<Group> groups = new ArrayList<>();
    private final double[] room;

    /** A task that was moved to another week than that of its due date. */
    public record Move(UUID taskId, UUID siteId, String site, String kind, LocalDate from, LocalDate to, String why) {}

    /** Hours there are and hours that named tasks ask for, by due date and after the moves. */
    public record Load(LocalDate monday, double room, double before, double after) {}

    /** What the weeks ahead look like. */
    public record Outlook(List<Load> weeks, List<Move> moves) {}

    /** Tasks of one site that stand in the same week. */
    private static final class Group {
        private final List<DueRow> tasks = new ArrayList<>();
        private final DueRow first;
        private final int wish;
        private final int least;
        private int most;
        private int week;
        private boolean anchored;
        private String why = "";

        Group(DueRow task, int least, int most, int wish) {
            this.first = task;
            this.least = least;
            this.most = most;
            this.wish = wish;
            this.week = wish;
            tasks.add(task);
        }

        double minutes() {
            return tasks.stream().mapToInt(DueRow::minutes).sum() + DRIVE;
        }

        double weight() {
            return tasks.stream().mapToDouble(DueRow::weight).sum();
        }

        @Nullable
        Position where() {
            return first.latitude() == null || first.longitude() == null
                    ? null
                    : new Position(first.latitude(), first.longitude());
        }
    }

    private Horizon(LocalDate monday, double[] room) {
        this.monday = monday;
        this.room = room;
    }

    /**
     * Looks ahead from a week.
     *
     * @param roomMinutes minutes of work and driving that named tasks may take, by week
     */
    static Outlook from(LocalDate monday, List<DueRow> tasks, ToDoubleFunction<LocalDate> roomMinutes) {
        double[] room = new double[WEEKS];
        for (int week = 0; week < WEEKS; week++) {
            room[week] = Math.max(0, roomMinutes.applyAsDouble(monday.plusWeeks(week)));
        }
        Horizon horizon = new Horizon(monday, room);
        tasks.forEach(horizon::add);
        double[] before = horizon.loads();
        List<Move> together = horizon.together();
        horizon.toNeighbours();
        horizon.level();
        List<Load> loads = new ArrayList<>();
        double[] after = horizon.loads();
        for (int week = 0; week < WEEKS; week++) {
            loads.add(new Load(monday.plusWeeks(week), room[week] / 60, before[week] / 60, after[week] / 60));
        }
        return new Outlook(loads, horizon.moves(together));
    }

    private int week(LocalDate day) {
        return (int) Math.floorDiv(ChronoUnit.DAYS.between(monday, day), 7L);
    }

    private void add(DueRow task) {
        int least = Math.max(0, week(task.windowFrom()));
        int most = Math.max(least, Math.min(WEEKS - 1, week(task.windowUntil())));
        if (least < WEEKS) {
            int wish = task.visitId() != null ? least : Math.max(least, Math.min(most, week(task.dueOn())));
            groups.add(new Group(task, least, task.visitId() != null ? least : most, wish));
        }
    }

    /** What is due later at a site that is visited sooner, if its window is open by then. */
    private List<Move> together() {
        List<Move> moves = new ArrayList<>();
        Map<UUID, Group> earliest = new LinkedHashMap<>();
        groups.sort(Comparator.<Group>comparingInt(g -> g.week).thenComparing(g -> g.first.taskId()));
        List<Group> kept = new ArrayList<>();
        for (Group group : groups) {
            Group sooner = earliest.putIfAbsent(group.first.siteId(), group);
            if (sooner == null || group.least > sooner.week) {
                kept.add(group);
                continue;
            }
            sooner.tasks.addAll(group.tasks);
            sooner.most = Math.max(sooner.week, Math.min(sooner.most, group.most));
            if (group.wish != sooner.week) {
                moves.add(move(
                        group.first,
                        group.wish,
                        sooner.week,
                        "the site is visited that week anyway, for " + sooner.first.kind()));
            }
        }
        groups.clear();
        groups.addAll(kept);
        return moves;
    }

    private void toNeighbours() {
        for (Group group : groups) {
            if (group.anchored || group.least == group.most) {
                continue;
            }
            Near now = nearest(group, group.week);
            Near best = now;
            int to = group.week;
            for (int week = group.least; week <= group.most; week++) {
                Near there = nearest(group, week);
                if (there.km < best.km - 1) {
                    best = there;
                    to = week;
                }
            }
            if (to != group.week
                    && best.km <= Candidates.NEAR_KM
                    && best.km < now.km / 2
                    && now.km - best.km >= WORTH_KM
                    && best.group != null) {
                group.why = "%s km from %s, which is visited that week; in its own week %s"
                        .formatted(
                                best.km < 1 ? "under 1" : Long.toString(Math.round(best.km)),
                                best.group.first.site(),
                                now.group == null
                                        ? "nothing else is near"
                                        : "the nearest is %.0f km away".formatted(now.km));
                group.week = to;
                group.anchored = true;
                best.group.anchored = true;
            }
        }
    }

    private record Near(@Nullable Group group, double km) {}

    private Near nearest(Group group, int week) {
        Position here = group.where();
        Near nearest = new Near(null, 1_000);
        if (here == null) {
            return nearest;
        }
        for (Group other : groups) {
            Position there = other.where();
            if (other != group && other.week == week && there != null && here.kilometresTo(there) < nearest.km) {
                nearest = new Near(other, here.kilometresTo(there));
            }
        }
        return nearest;
    }

    /** Takes the lightest out of full weeks, into the next week of its window that has room, else an earlier one. */
    private void level() {
        for (int week = 0; week < WEEKS; week++) {
            boolean moved = true;
            while (moved && loads()[week] > room[week]) {
                moved = relieve(week);
            }
        }
    }

    private boolean relieve(int week) {
        double[] loads = loads();
        List<Group> there = groups.stream()
                .filter(g -> g.week == week && g.least < g.most)
                .sorted(Comparator.comparingDouble(Group::weight)
                        .thenComparing(g -> g.first.windowUntil(), Comparator.reverseOrder()))
                .toList();
        for (Group group : there) {
            int to = roomFor(group, week, loads);
            if (to >= 0) {
                group.why = "the week of %s is full (%.0f h of %.0f h); its window is open until %s"
                        .formatted(
                                Times.day(monday.plusWeeks(week)),
                                loads[week] / 60,
                                room[week] / 60,
                                Times.day(group.first.windowUntil()));
                group.week = to;
                return true;
            }
        }
        return false;
    }

    private int roomFor(Group group, int week, double[] loads) {
        for (int to = week + 1; to <= group.most; to++) {
            if (loads[to] + group.minutes() <= room[to]) {
                return to;
            }
        }
        for (int to = week - 1; to >= group.least; to--) {
            if (loads[to] + group.minutes() <= room[to]) {
                return to;
            }
        }
        return -1;
    }

    private double[] loads() {
        double[] loads = new double[WEEKS];
        groups.forEach(group -> loads[group.week] += group.minutes());
        return loads;
    }

    private List<Move> moves(List<Move> together) {
        Map<UUID, Move> all = new LinkedHashMap<>();
        together.forEach(move -> all.put(move.taskId(), move));
        for (Group group : groups) {
            if (group.week != group.wish) {
                group.tasks.forEach(task -> {
                    Move before = all.get(task.taskId());
                    LocalDate from = before == null ? monday.plusWeeks(group.wish) : before.from();
                    all.put(
                            task.taskId(),
                            new Move(
                                    task.taskId(),
                                    task.siteId(),
                                    task.site(),
                                    task.kind(),
                                    from,
                                    monday.plusWeeks(group.week),
                                    group.why));
                });
            }
        }
        return all.values().stream()
                .filter(move -> !move.from().equals(move.to()))
                .sorted(Comparator.comparing(Move::to).thenComparing(Move::site).thenComparing(Move::kind))
                .toList();
    }

    private Move move(DueRow task, int from, int to, String why) {
        return new Move(
                task.taskId(),
                task.siteId(),
                task.site(),
                task.kind(),
                monday.plusWeeks(from),
                monday.plusWeeks(to),
                why);
    }
}
