package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Takes what lies alone in its week to a week of its window in which a neighbour is visited. */
final class Neighbours {

    /** Nearer by less than this is not worth another week, km; our own judgement. */
    private static final double WORTH_KM = 5;

    private final List<SiteGroup> groups;

    Neighbours(List<SiteGroup> groups) {
        this.groups = groups;
    }

    /** The nearest other site of a week; without one it is far away. */
    private record Near(@Nullable SiteGroup group, double km) {}

    void visit() {
        groups.stream()
                .filter(group -> !group.anchored && group.least < group.most)
                .forEach(this::visit);
    }

    private void visit(SiteGroup group) {
        Near now = nearest(group, group.week);
        Near best = now;
        for (int week = group.least; week <= group.most; week++) {
            Near there = nearest(group, week);
            if (there.km < best.km - 1) {
                best = there;
            }
        }
        if (best != now
                && best.group != null
                && best.km <= Candidates.NEAR_KM
                && best.km < now.km / 2
                && now.km - best.km >= WORTH_KM) {
            group.why = why(best.group, best.km, now);
            group.week = best.group.week;
            group.anchored = true;
            best.group.anchored = true;
        }
    }

    private static String why(SiteGroup neighbour, double km, Near now) {
        return "%s km from %s, which is visited that week; in its own week %s"
                .formatted(
                        km < 1 ? "under 1" : Long.toString(Math.round(km)),
                        neighbour.first.site(),
                        now.group == null ? "nothing else is near" : "the nearest is %.0f km away".formatted(now.km));
    }

    private Near nearest(SiteGroup group, int week) {
        Position here = group.where();
        Near nearest = new Near(null, 1_000);
        if (here == null) {
            return nearest;
        }
        for (SiteGroup other : groups) {
            Position there = other.where();
            boolean elsewhere = !other.first.siteId().equals(group.first.siteId());
            if (elsewhere && other.week == week && there != null && here.kilometresTo(there) < nearest.km) {
                nearest = new Near(other, here.kilometresTo(there));
            }
        }
        return nearest;
    }
}
