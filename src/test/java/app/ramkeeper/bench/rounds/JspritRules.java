package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.OpenProblem;
import app.ramkeeper.rounds.solver.Round;
import com.graphhopper.jsprit.core.problem.AbstractJob;
import com.graphhopper.jsprit.core.problem.constraint.ConstraintManager;
import com.graphhopper.jsprit.core.problem.constraint.ConstraintManager.Priority;
import com.graphhopper.jsprit.core.problem.constraint.HardActivityConstraint;
import com.graphhopper.jsprit.core.problem.constraint.HardRouteConstraint;
import com.graphhopper.jsprit.core.problem.constraint.SoftRouteConstraint;
import com.graphhopper.jsprit.core.problem.job.Job;
import com.graphhopper.jsprit.core.problem.misc.JobInsertionContext;
import com.graphhopper.jsprit.core.problem.solution.VehicleRoutingProblemSolution;
import com.graphhopper.jsprit.core.problem.solution.route.VehicleRoute;
import com.graphhopper.jsprit.core.problem.solution.route.activity.End;
import com.graphhopper.jsprit.core.problem.solution.route.activity.Start;
import com.graphhopper.jsprit.core.problem.solution.route.activity.TourActivity;
import java.util.ArrayList;
import java.util.List;

/** Our rules and our cost where jsprit has none of its own: who may go where at what price, the longest day, optional visits. */
final class JspritRules {

    private final OpenProblem problem;
    private final double mustOut;
    private final double perRound;

    /**
     * @param mustOut what a visit that must go in costs while it is out
     * @param perRound what each round costs besides
     */
    JspritRules(OpenProblem problem, double mustOut, double perRound) {
        this.problem = problem;
        this.mustOut = mustOut;
        this.perRound = perRound;
    }

    /** With {@code choosy} nothing goes in that adds more than it is worth; without it as much goes in as fits. */
    void addTo(ConstraintManager constraints, boolean choosy) {
        constraints.addConstraint(
                (HardRouteConstraint) facts -> problem.price(job(facts), round(facts)) < Double.POSITIVE_INFINITY);
        constraints.addConstraint((SoftRouteConstraint) facts -> problem.price(job(facts), round(facts)));
        if (choosy) {
            constraints.addConstraint((HardActivityConstraint) this::worthIt, Priority.HIGH);
        }
        if (anyLongest()) {
            constraints.addConstraint((HardActivityConstraint) this::shortEnough, Priority.LOW);
        }
    }

    double cost(VehicleRoutingProblemSolution solution) {
        double sum = 0;
        for (VehicleRoute route : solution.getRoutes()) {
            int[] stops = stops(route).stream().mapToInt(Integer::intValue).toArray();
            sum += PlainRound.cost(problem, (int) route.getVehicle().getUserData(), stops) + perRound;
        }
        for (Job out : solution.getUnassignedJobs()) {
            int job = number(out);
            sum += problem.job(job).must() ? mustOut : problem.job(job).prize();
        }
        return sum;
    }

    static List<Integer> stops(VehicleRoute route) {
        List<Integer> stops = new ArrayList<>();
        for (TourActivity activity : route.getActivities()) {
            stops.add(number(((TourActivity.JobActivity) activity).getJob()));
        }
        return stops;
    }

    private HardActivityConstraint.ConstraintsStatus worthIt(
            JobInsertionContext facts, TourActivity before, TourActivity here, TourActivity after, double leaves) {
        int job = job(facts);
        Round round = problem.round(round(facts));
        int from =
                before instanceof Start ? round.start() : before.getLocation().getIndex();
        int to = after instanceof End ? round.end() : after.getLocation().getIndex();
        int at = here.getLocation().getIndex();
        double added = problem.cost(from, at) + problem.cost(at, to) + problem.price(job, round(facts));
        added += facts.getRoute().isEmpty() ? round.fixedCost() : -problem.cost(from, to);
        return added < problem.job(job).prize()
                ? HardActivityConstraint.ConstraintsStatus.FULFILLED
                : HardActivityConstraint.ConstraintsStatus.NOT_FULFILLED;
    }

    private HardActivityConstraint.ConstraintsStatus shortEnough(
            JobInsertionContext facts, TourActivity before, TourActivity here, TourActivity after, double leaves) {
        List<TourActivity> activities = facts.getRoute().getActivities();
        int[] stops = new int[activities.size() + 1];
        int count = 0;
        if (before instanceof Start) {
            stops[count++] = job(facts);
        }
        for (TourActivity activity : activities) {
            stops[count++] = number(((TourActivity.JobActivity) activity).getJob());
            if (activity == before) {
                stops[count++] = job(facts);
            }
        }
        return PlainRound.keepsTheRules(problem, round(facts), stops)
                ? HardActivityConstraint.ConstraintsStatus.FULFILLED
                : HardActivityConstraint.ConstraintsStatus.NOT_FULFILLED;
    }

    boolean anyOptional() {
        for (int job = 0; job < problem.jobs(); job++) {
            if (!problem.job(job).must()) {
                return true;
            }
        }
        return false;
    }

    private boolean anyLongest() {
        for (int round = 0; round < problem.rounds(); round++) {
            Round day = problem.round(round);
            if (day.longest() < day.until() - day.from()) {
                return true;
            }
        }
        return false;
    }

    private static int number(Job job) {
        return (int) ((AbstractJob) job).getUserData();
    }

    private static int job(JobInsertionContext facts) {
        return number(facts.getJob());
    }

    private static int round(JobInsertionContext facts) {
        return (int) facts.getNewVehicle().getUserData();
    }
}
