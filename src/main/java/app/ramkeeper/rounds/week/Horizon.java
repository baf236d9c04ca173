package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.ToDoubleFunction;

/**
 * Spreads named tasks over the coming weeks, each within its own window: what is due at one site goes together, what lies alone
 * goes where a neighbour is visited, and what a full week cannot take goes where there is room. Each move says why.
 */
final class Horizon {

    static final int WEEKS = 8;

    /** Driving that a visit adds, minutes; common practice, without source. */
    static final double DRIVE = 25;

    private final LocalDate monday;
    private final List<SiteGroup> groups = new ArrayList<>();

    /** A task that was moved to another week than that of its due date. */
    public record Move(UUID taskId, UUID siteId, String site, String kind, LocalDate from, LocalDate to, String why) {}

    /** Hours there are and hours that named tasks ask for, by due date and after the moves. */
    public record Load(LocalDate monday, double room, double before, double after) {}

    /** What the weeks ahead look like. */
    public record Outlook(List<Load> weeks, List<Move> moves) {}

    private Horizon(LocalDate monday) {
        this.monday = monday;
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
        Horizon horizon = new Horizon(monday);
        tasks.forEach(horizon::add);
        Levelling levelling = new Levelling(monday, horizon.groups, room);
        double[] before = levelling.loads();
        List<Move> together = horizon.together();
        new Neighbours(horizon.groups).visit();
        levelling.level();
        List<Load> loads = new ArrayList<>();
        double[] after = levelling.loads();
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
        if (least < WEEKS && task.visitId() != null) {
            groups.add(new SiteGroup(task, least, least, least));
        } else if (least < WEEKS) {
            int last = Math.max(least, week(task.windowUntil()));
            int wish = Math.max(least, Math.min(last, week(task.dueOn())));
            groups.add(new SiteGroup(task, least, Math.min(WEEKS - 1, last), wish));
        }
    }

    /** What is due later at a site that is visited sooner, if its window is open by then. */
    private List<Move> together() {
        List<Move> moves = new ArrayList<>();
        Map<UUID, SiteGroup> earliest = new LinkedHashMap<>();
        groups.sort(Comparator.<SiteGroup>comparingInt(g -> g.week).thenComparing(g -> g.first.taskId()));
        List<SiteGroup> kept = new ArrayList<>();
        for (SiteGroup group : groups) {
            SiteGroup sooner = earliest.putIfAbsent(group.first.siteId(), group);
            if (sooner == null || group.least > sooner.week) {
                kept.add(group);
                continue;
            }
            sooner.take(group);
            if (group.wish != sooner.week && sooner.week < WEEKS) {
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

    private List<Move> moves(List<Move> together) {
        Map<UUID, Move> all = new LinkedHashMap<>();
        together.forEach(move -> all.put(move.taskId(), move));
        for (SiteGroup group : groups) {
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
