package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.Job;
import app.ramkeeper.rounds.solver.OpenProblem;
import app.ramkeeper.rounds.solver.Plan;
import app.ramkeeper.rounds.solver.Problem;
import app.ramkeeper.rounds.solver.Round;
import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import com.graphhopper.jsprit.core.algorithm.VehicleRoutingAlgorithm;
import com.graphhopper.jsprit.core.algorithm.box.Jsprit;
import com.graphhopper.jsprit.core.algorithm.box.Jsprit.Parameter;
import com.graphhopper.jsprit.core.algorithm.listener.IterationEndsListener;
import com.graphhopper.jsprit.core.algorithm.state.StateManager;
import com.graphhopper.jsprit.core.algorithm.termination.TimeTermination;
import com.graphhopper.jsprit.core.problem.Location;
import com.graphhopper.jsprit.core.problem.VehicleRoutingProblem;
import com.graphhopper.jsprit.core.problem.VehicleRoutingProblem.FleetSize;
import com.graphhopper.jsprit.core.problem.constraint.ConstraintManager;
import com.graphhopper.jsprit.core.problem.job.Service;
import com.graphhopper.jsprit.core.problem.solution.VehicleRoutingProblemSolution;
import com.graphhopper.jsprit.core.problem.solution.route.VehicleRoute;
import com.graphhopper.jsprit.core.problem.vehicle.VehicleImpl;
import com.graphhopper.jsprit.core.problem.vehicle.VehicleTypeImpl;
import com.graphhopper.jsprit.core.util.Solutions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Random;
import org.slf4j.LoggerFactory;

/**
 * The outside yardstick: our problem as one of jsprit's, and its answer back.
 *
 * <p>Windows that differ by period lie on one line of time, a stretch for each kind of period. Its threshold falls with the
 * number of steps, so a first twentieth of the time counts how many there will be; where visits may be left out another
 * twentieth tries which of two ways to choose suits it better.
 */
final class JspritEngine {

    /** Further apart than any day is long. */
    private final double stretch;

    private final OpenProblem open;
    private final JspritRules rules;
    private final int[] lineOf;
    private final int[] kindOf;
    private final boolean alike;
    private final double perRound;

    JspritEngine(Problem problem, boolean fewest) {
        ((Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME)).setLevel(Level.WARN);
        this.open = new OpenProblem(problem);
        double latest = 0;
        double farthest = 0;
        for (int round = 0; round < open.rounds(); round++) {
            latest = Math.max(latest, open.round(round).until());
        }
        for (int a = 0; a < open.locations(); a++) {
            for (int b = 0; b < open.locations(); b++) {
                farthest = Math.max(farthest, open.cost(a, b));
            }
        }
        this.stretch = 2 * latest + 1;
        this.lineOf = lines();
        this.kindOf = kinds();
        this.alike = java.util.Arrays.stream(kindOf).allMatch(kind -> kind == 0);
        this.perRound = fewest ? 10 * farthest : 0;
        this.rules = new JspritRules(open, 4 * farthest, perRound);
    }

    Engine.Result solve(long seed, Duration time) {
        VehicleRoutingProblem theirs = theirs();
        long began = System.nanoTime();
        long trial = time.toMillis() / 20 + 1;
        Count count = new Count();
        boolean choosy = false;
        VehicleRoutingProblemSolution best = run(theirs, seed, false, Integer.MAX_VALUE, trial, count);
        if (rules.anyOptional()) {
            Count other = new Count();
            VehicleRoutingProblemSolution second = run(theirs, seed, true, Integer.MAX_VALUE, trial, other);
            choosy = second.getCost() < best.getCost();
            best = choosy ? second : best;
            count = choosy ? other : count;
        }
        long left = Math.max(1, time.toMillis() - (System.nanoTime() - began) / 1_000_000);
        int most = (int) Math.min(Integer.MAX_VALUE, 1 + count.aMilli() * left);
        VehicleRoutingProblemSolution last = run(theirs, seed, choosy, most, left, count);
        return new Engine.Result(plan(best.getCost() < last.getCost() ? best : last), count.steps);
    }

    private VehicleRoutingProblemSolution run(
            VehicleRoutingProblem theirs, long seed, boolean choosy, int most, long millis, Count count) {
        StateManager states = new StateManager(theirs);
        ConstraintManager constraints = new ConstraintManager(theirs, states);
        rules.addTo(constraints, choosy);
        VehicleRoutingAlgorithm algorithm = Jsprit.Builder.newInstance(theirs)
                .setRandom(new Random(seed))
                .setStateAndConstraintManager(states, constraints)
                .setObjectiveFunction(rules::cost)
                .setProperty(Parameter.THREADS, "1")
                // a round keeps its own person and day; only alike ones could change
                .setProperty(Parameter.VEHICLE_SWITCH, "false")
                .setProperty(Parameter.FIXED_COST_PARAM, "1")
                .setProperty(Parameter.FAST_REGRET, "true")
                .buildAlgorithm();
        algorithm.setMaxIterations(most);
        TimeTermination clock = new TimeTermination(millis);
        algorithm.setPrematureAlgorithmTermination(clock);
        algorithm.addListener(clock);
        count.steps = 0;
        algorithm.addListener(count);
        return Solutions.bestOf(algorithm.searchSolutions());
    }

    /** Counts steps, and how many there are a millisecond once the first plan stands. */
    private static final class Count implements IterationEndsListener {
        private int steps;
        private long firstEnded;
        private long lastEnded;

        @Override
        public void informIterationEnds(
                int i, VehicleRoutingProblem problem, Collection<VehicleRoutingProblemSolution> solutions) {
            lastEnded = System.nanoTime();
            firstEnded = steps == 0 ? lastEnded : firstEnded;
            steps = i;
        }

        double aMilli() {
            return steps < 2 ? 0 : (steps - 1) * 1e6 / (lastEnded - firstEnded);
        }
    }

    private VehicleRoutingProblem theirs() {
        VehicleRoutingProblem.Builder builder = VehicleRoutingProblem.Builder.newInstance();
        builder.setFleetSize(FleetSize.FINITE);
        builder.setRoutingCost(new JspritTravel(open));
        for (int round = 0; round < open.rounds(); round++) {
            builder.addVehicle(vehicle(round));
        }
        for (int job = 0; job < open.jobs(); job++) {
            Service service = service(job);
            if (service != null) {
                builder.addJob(service);
            }
        }
        return builder.build();
    }

    private VehicleImpl vehicle(int number) {
        Round round = open.round(number);
        VehicleTypeImpl type = VehicleTypeImpl.Builder.newInstance("kind " + kindOf[number])
                .addCapacityDimension(0, whole(Math.min(round.capacity(), 1e9)))
                .setFixedCost(round.fixedCost() + perRound)
                .build();
        double shift = shift(round.period());
        return VehicleImpl.Builder.newInstance(Integer.toString(number))
                .setType(type)
                .setStartLocation(location(round.start()))
                .setEndLocation(location(round.end()))
                .setEarliestStart(round.from() + shift)
                .setLatestArrival(round.until() + shift)
                .setUserData(number)
                .build();
    }

    /** Null for what is closed all the time. */
    private Service service(int number) {
        Job job = open.job(number);
        Service.Builder<Service> builder = Service.Builder.newInstance(Integer.toString(number));
        builder.setLocation(location(job.location()))
                .setServiceTime(job.service())
                .addSizeDimension(0, whole(job.load()))
                .setPriority(priority(number))
                .setUserData(number);
        boolean ever = false;
        for (int period = 0; period < job.opens().length; period++) {
            double closes = Math.min(job.closes()[period], stretch / 2);
            double opens = Math.max(0, job.opens()[period]);
            if (lineOf[period] == period && opens <= closes) {
                builder.addTimeWindow(opens + shift(period), closes + shift(period));
                ever = true;
            }
        }
        return ever ? builder.build() : null;
    }

    /** 1 for the tenth that is dearest to leave out, 10 for the cheapest; the library's own middle where all must go in. */
    private int priority(int number) {
        if (open.job(number).must()) {
            return 2;
        }
        int dearer = 0;
        for (int job = 0; job < open.jobs(); job++) {
            dearer += open.job(job).prize() > open.job(number).prize() ? 1 : 0;
        }
        return 1 + 10 * dearer / open.jobs();
    }

    private static Location location(int index) {
        return Location.Builder.newInstance()
                .setId(Integer.toString(index))
                .setIndex(index)
                .build();
    }

    private static int whole(double load) {
        if (load != Math.rint(load)) {
            throw new IllegalArgumentException("Not a whole number: " + load);
        }
        return (int) load;
    }

    private double shift(int period) {
        return stretch * lineOf[period];
    }

    /** For each period the first one with the same windows for every job. */
    private int[] lines() {
        int periods = open.jobs() == 0 ? 0 : open.job(0).opens().length;
        int[] lines = new int[periods];
        for (int period = 0; period < periods; period++) {
            while (!sameWindows(lines[period], period)) {
                lines[period]++;
            }
        }
        return lines;
    }

    private boolean sameWindows(int one, int other) {
        for (int job = 0; job < open.jobs(); job++) {
            Job visit = open.job(job);
            if (visit.opens()[one] != visit.opens()[other] || visit.closes()[one] != visit.closes()[other]) {
                return false;
            }
        }
        return true;
    }

    /** For each round the first one with the same prices and the same line of time. */
    private int[] kinds() {
        int[] kinds = new int[open.rounds()];
        for (int round = 0; round < kinds.length; round++) {
            while (!samePrices(kinds[round], round)) {
                kinds[round]++;
            }
        }
        return kinds;
    }

    private boolean samePrices(int one, int other) {
        if (lineOf[open.round(one).period()] != lineOf[open.round(other).period()]) {
            return false;
        }
        for (int job = 0; job < open.jobs(); job++) {
            if (open.price(job, one) != open.price(job, other)) {
                return false;
            }
        }
        return true;
    }

    private Plan plan(VehicleRoutingProblemSolution solution) {
        int[][] rounds = new int[open.rounds()][0];
        for (VehicleRoute route : solution.getRoutes()) {
            List<Integer> stops = new ArrayList<>(JspritRules.stops(route));
            rounds[(int) route.getVehicle().getUserData()] =
                    stops.stream().mapToInt(Integer::intValue).toArray();
        }
        return CheapestInsertion.plan(open, rounds);
    }
}
