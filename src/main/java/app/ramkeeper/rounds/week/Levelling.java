package app.ramkeeper.rounds.week;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/** Takes the lightest out of full weeks, into the next week of its window that has room, else an earlier one. */
final class Levelling {

    private final LocalDate monday;
    private final List<SiteGroup> groups;
    private final double[] room;

    /**
     * For the weeks from a Monday on.
     *
     * @param room minutes of work and driving that there are, by week
     */
    Levelling(LocalDate monday, List<SiteGroup> groups, double[] room) {
        this.monday = monday;
        this.groups = groups;
        this.room = room;
    }

    void level() {
        for (int week = 0; week < room.length; week++) {
            boolean moved = true;
            while (moved && loads()[week] > room[week]) {
                moved = relieve(week);
            }
        }
    }

    /** Minutes that the tasks ask for as they stand, by week. */
    double[] loads() {
        double[] loads = new double[room.length];
        groups.stream()
                .filter(group -> group.week < room.length)
                .forEach(group -> loads[group.week] += group.minutes());
        return loads;
    }

    private boolean relieve(int week) {
        double[] loads = loads();
        List<SiteGroup> there = groups.stream()
                .filter(g -> g.week == week && g.least < g.most)
                .sorted(Comparator.comparingDouble(SiteGroup::weight)
                        .thenComparing(g -> g.first.windowUntil(), Comparator.reverseOrder()))
                .toList();
        for (SiteGroup group : there) {
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

    private int roomFor(SiteGroup group, int week, double[] loads) {
        for (int to = week + 1; to <= Math.min(group.most, room.length - 1); to++) {
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
}
