package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.design.Rejection.Reason;
import app.ramkeeper.sizing.line.DeliveryLine;
import app.ramkeeper.sizing.line.GroundPoint;
import app.ramkeeper.sizing.line.Outlet;
import app.ramkeeper.sizing.line.Stretch;
import app.ramkeeper.sizing.pipe.Derating;
import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.ram.Falling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Designs on the front of cost against delivered flow: pump model x number x drive pipe x delivery pipe by stretch.
 *
 * <p>Delivered flows from the demand to the most that any combination gives are taken in even ratios. For each, {@link
 * StretchProblem} finds the cheapest line for every head at once, and every combination takes the line it can afford by
 * the head it has to spare. So for each of these flows the result is the cheapest of all combinations, up to the
 * rounding that {@link StretchProblem} states (1 cm of head a stretch). The duty of each design is then solved with its
 * own line.
 */
public final class DesignSearch {

    private static final int LEVELS = 12;
    private static final double STEP_M = 0.01;
    private static final int MOST_STATES = 3000;
    private static final double SHORT_OF_MOST = 0.995;

    private final DesignTask task;
    private final DesignCatalogue catalogue;
    private final Combinations combinations;
    private final double[] lengths;
    private final double[] levels;
    private final double standing;

    private DesignSearch(DesignTask task, DesignCatalogue catalogue) {
        this.task = task;
        this.catalogue = catalogue;
        this.combinations = new Combinations(task, catalogue);
        List<GroundPoint> points = task.ground().points();
        this.lengths = new double[points.size() - 1];
        this.levels = points.stream().mapToDouble(GroundPoint::levelM).toArray();
        for (int i = 0; i < lengths.length; i++) {
            double run = points.get(i + 1).chainageM() - points.get(i).chainageM();
            lengths[i] = Math.hypot(run, levels[i + 1] - levels[i]);
        }
        levels[lengths.length] = Math.max(levels[lengths.length], task.tankLevelM());
        this.standing = task.lift().metres();
    }

    /**
     * The front for a task.
     *
     * <p>Worked value: one pump of 1000, 24 m of drive pipe at 20 and 401.8 m of delivery pipe at 4 a metre cost 3087.2.
     *
     * @return at best a dozen designs, cheapest first; none if nothing meets the demand, and then every model is rejected
     *     with its reason
     */
    public static DesignFront front(DesignTask task, DesignCatalogue catalogue) {
        return new DesignSearch(task, catalogue).search();
    }

    /** The cheapest found at one flow. */
    record Found(Combination combination, double flow, double cost, int[] pipes) {}

    private DesignFront search() {
        double[] bestByPump = new double[catalogue.pumps().size()];
        double[] costByPump = new double[catalogue.pumps().size()];
        double[] flowByPump = new double[catalogue.pumps().size()];
        Arrays.fill(costByPump, Double.POSITIVE_INFINITY);
        for (Combination combination : combinations.all()) {
            bestByPump[combination.pumpIndex()] =
                    Math.max(bestByPump[combination.pumpIndex()], combination.deliveredM3s(standing));
        }
        List<Found> found = new ArrayList<>();
        for (double flow : flows(Arrays.stream(bestByPump).max().orElse(0))) {
            cheapest(flow, costByPump, flowByPump, found);
        }
        List<Design> designs = undominated(found.stream().map(this::design).toList());
        return new DesignFront(designs, rejected(designs, bestByPump, costByPump, flowByPump));
    }

    private double[] flows(double most) {
        double demand = task.demand().cubicMetresPerSecond();
        if (most < demand) {
            return new double[0];
        }
        double top = Math.max(demand, most * SHORT_OF_MOST);
        double[] flows = new double[LEVELS];
        for (int i = 0; i < LEVELS; i++) {
            flows[i] = demand * Math.pow(top / demand, (double) i / (LEVELS - 1));
        }
        return flows;
    }

    private void cheapest(double flow, double[] costByPump, double[] flowByPump, List<Found> found) {
        double outlet = levels[lengths.length];
        List<Combination> able = new ArrayList<>();
        List<Double> heads = new ArrayList<>();
        double most = 0;
        for (Combination combination : combinations.all()) {
            double head = combination.headFor(flow, standing);
            if (head > 0) {
                able.add(combination);
                heads.add(head + levels[0] - outlet);
                most = Math.max(most, head + levels[0] - outlet);
            }
        }
        double[] gradients = gradients(flow);
        double worst = 0;
        for (double gradient : gradients) {
            worst = gradient < Double.POSITIVE_INFINITY ? Math.max(worst, gradient) : worst;
        }
        double useful =
                standing + levels[0] - outlet + worst * Arrays.stream(lengths).sum() + lengths.length * STEP_M;
        most = Math.min(most, useful);
        StretchProblem problem = problem(Math.max(STEP_M, most / MOST_STATES));
        StretchProblem.Plan plan = problem.solve(gradients, most);
        Found best = null;
        for (int i = 0; i < able.size(); i++) {
            Combination combination = able.get(i);
            double head = Math.min(most, heads.get(i));
            double cost = combination.cost() + plan.cost(head);
            if (cost < costByPump[combination.pumpIndex()]) {
                costByPump[combination.pumpIndex()] = cost;
                flowByPump[combination.pumpIndex()] = flow;
            }
            if (cost < (best == null ? Double.POSITIVE_INFINITY : best.cost())) {
                best = new Found(combination, flow, cost, plan.pipes(head));
            }
        }
        if (best != null) {
            found.add(best);
        }
    }

    StretchProblem problem(double step) {
        List<PricedPipe> pipes = catalogue.deliveryPipes();
        double[] prices = pipes.stream().mapToDouble(PricedPipe::pricePerMetre).toArray();
        double[] ratings = pipes.stream()
                .mapToDouble(pipe -> task.ambient()
                        .headOf(Derating.of(pipe.type().material())
                                .allowed(pipe.type(), task.limits().pipeWall())
                                .value())
                        .metres())
                .toArray();
        double shut = levels[0] + Math.max(standing, combinations.deadHeadM());
        return new StretchProblem(
                lengths, levels, prices, ratings, shut, task.limits().joint(), step);
    }

    double[] gradients(double flow) {
        double nu = task.ambient().water().kinematicViscosity();
        double[] gradients = new double[catalogue.deliveryPipes().size()];
        for (int p = 0; p < gradients.length; p++) {
            PipeType type = catalogue.deliveryPipes().get(p).type();
            double bore = type.bore().metres();
            double roughness = type.material().roughness().metres();
            gradients[p] = Friction.velocity(flow, bore) > task.limits().mostVelocity()
                    ? Double.POSITIVE_INFINITY
                    : Friction.headLoss(
                            flow, bore, 1, roughness, 0, nu, task.ambient().gravity());
        }
        return gradients;
    }

    private Design design(Found found) {
        Combination combination = found.combination();
        List<Stretch> stretches = stretches(found.pipes());
        DeliveryLine line = new DeliveryLine(
                task.ground(), stretches, List.of(Outlet.tank(task.ground().endM(), levels[lengths.length])));
        double delivered = Falling.zero(
                "duty of a design",
                q -> combination.deliveredM3s(line.headAtPumpM(q, task.ambient())) - q,
                0,
                combination.deliveredM3s(standing),
                1e-9 * found.flow());
        PipeType drive = catalogue.drivePipes().get(combination.driveIndex()).type();
        Head head = new Head(line.headAtPumpM(delivered, task.ambient()));
        return new Design(
                combination.model(),
                combination.number(),
                drive,
                stretches,
                found.cost(),
                new Flow(combination.driveM3s() * combination.number()),
                new Flow(delivered),
                head,
                checks(combination, drive, head));
    }

    private List<Check> checks(Combination combination, PipeType drive, Head head) {
        List<Check> checks = new ArrayList<>(combinations.checks(drive, combination.driveM3s()));
        checks.addAll(combination.model().checks(task.fall(), head, new Flow(combination.driveM3s())));
        return checks;
    }

    private List<Stretch> stretches(int[] pipes) {
        List<Stretch> stretches = new ArrayList<>();
        for (int j = 0; j < pipes.length; j++) {
            if (j + 1 == pipes.length || pipes[j + 1] != pipes[j]) {
                double to = task.ground().points().get(j + 1).chainageM();
                stretches.add(
                        Stretch.of(to, catalogue.deliveryPipes().get(pipes[j]).type()));
            }
        }
        return stretches;
    }

    private static List<Design> undominated(List<Design> designs) {
        return designs.stream()
                .filter(one -> designs.stream().noneMatch(other -> beats(other, one)))
                .distinct()
                .sorted((a, b) -> Double.compare(a.cost(), b.cost()))
                .toList();
    }

    private static boolean beats(Design other, Design one) {
        int flow = other.delivered().compareTo(one.delivered());
        return other.cost() <= one.cost() && flow >= 0 && (other.cost() < one.cost() || flow > 0);
    }

    private List<Rejection> rejected(List<Design> designs, double[] best, double[] costs, double[] flows) {
        List<Rejection> rejected = new ArrayList<>();
        for (int i = 0; i < best.length; i++) {
            Rejection early = combinations.rejection(i);
            String name = catalogue.pumps().get(i).model().name();
            if (early != null) {
                rejected.add(early);
            } else if (designs.stream().noneMatch(design -> design.pump().name().equals(name))) {
                rejected.add(late(name, designs, best[i], costs[i], flows[i]));
            }
        }
        return rejected;
    }

    private Rejection late(String name, List<Design> designs, double best, double cost, double flow) {
        if (best < task.demand().cubicMetresPerSecond()) {
            return new Rejection(
                    name,
                    Reason.DEMAND,
                    "It delivers at most %s of the %s l/day wanted, even without friction in the line."
                            .formatted(
                                    Numbers.text(new Flow(best).litresPerDay()),
                                    Numbers.text(task.demand().litresPerDay())));
        }
        if (cost == Double.POSITIVE_INFINITY) {
            return new Rejection(
                    name,
                    Reason.DELIVERY_LINE,
                    "No delivery pipe of the catalogue brings the demand within its pressure and the head to spare.");
        }
        double cheaper = designs.stream()
                .filter(design -> design.delivered().cubicMetresPerSecond() >= flow * (1 - 1e-9))
                .mapToDouble(Design::cost)
                .min()
                .orElse(cost);
        return new Rejection(
                name,
                Reason.COST,
                "It brings %s l/day for %s; another design brings that for %s."
                        .formatted(
                                Numbers.text(new Flow(flow).litresPerDay()),
                                Numbers.text(cost),
                                Numbers.text(cheaper)));
    }
}
