package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.design.Rejection.Reason;
import app.ramkeeper.sizing.drive.DrivePipe;
import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.ram.PumpModel;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** All pumps with all numbers and drive pipes that keep the rules, and why a model has none. */
final class Combinations {

    /** Loss of a square entrance, in velocity heads. */
    private static final double ENTRANCE = 0.5;

    private static final double NOMINAL_SLACK = 0.9;

    private final DesignTask task;
    private final DesignCatalogue catalogue;
    private final List<Combination> all = new ArrayList<>();
    private final @Nullable Rejection[] rejected;
    private double deadHeadM;

    Combinations(DesignTask task, DesignCatalogue catalogue) {
        this.task = task;
        this.catalogue = catalogue;
        this.rejected = new Rejection[catalogue.pumps().size()];
        for (int i = 0; i < rejected.length; i++) {
            tryModel(i);
        }
    }

    List<Combination> all() {
        return all;
    }

    @Nullable
    Rejection rejection(int pump) {
        return rejected[pump];
    }

    /** Greatest dead head that any combination can make, m above the pumps. */
    double deadHeadM() {
        return deadHeadM;
    }

    private void tryModel(int pump) {
        PumpModel model = catalogue.pumps().get(pump).model();
        double fall = task.fall().metres();
        double lift = task.lift().metres();
        if (fall < model.leastFall().metres() || fall > model.mostFall().metres()) {
            reject(
                    pump,
                    Reason.FALL,
                    "The fall of %s m is outside its %s to %s m."
                            .formatted(
                                    Numbers.text(fall),
                                    Numbers.text(model.leastFall().metres()),
                                    Numbers.text(model.mostFall().metres())));
        } else if (lift > model.mostLift().metres()) {
            reject(
                    pump,
                    Reason.LIFT,
                    "The lift of %s m is above its %s m."
                            .formatted(
                                    Numbers.text(lift),
                                    Numbers.text(model.mostLift().metres())));
        } else if (task.source().compareTo(model.leastDrive()) < 0) {
            reject(
                    pump,
                    Reason.SOURCE,
                    "The source gives %s l/min, it needs at least %s l/min."
                            .formatted(
                                    Numbers.text(task.source().litresPerMinute()),
                                    Numbers.text(model.leastDrive().litresPerMinute())));
        } else {
            tryDrivePipes(pump, model);
        }
    }

    private void tryDrivePipes(int pump, PumpModel model) {
        int before = all.size();
        String lastFailure = "";
        boolean pressure = false;
        for (int number = 1; number <= task.limits().mostPumps(); number++) {
            double each = task.source().cubicMetresPerSecond() / number;
            if (each < model.leastDrive().cubicMetresPerSecond()) {
                break;
            }
            double drive = Math.min(each, model.mostDrive().cubicMetresPerSecond());
            for (int pipe = 0; pipe < catalogue.drivePipes().size(); pipe++) {
                PipeType type = catalogue.drivePipes().get(pipe).type();
                Pressure bears = pressureOn(type);
                String failure = failure(type, model, drive);
                if (!failure.isEmpty()) {
                    lastFailure = failure;
                } else if (bears.compareTo(model.rating()) > 0) {
                    pressure = true;
                    lastFailure = "it is rated " + Numbers.text(model.rating().bar()) + " bar and may see "
                            + Numbers.text(bears.bar()) + " bar";
                } else {
                    add(pump, number, pipe, drive);
                }
            }
        }
        if (all.size() == before) {
            String sentence = pressure
                    ? "It does not bear the pressure: " + lastFailure + "."
                    : "No drive pipe of the catalogue keeps the rules: " + lastFailure;
            reject(pump, pressure ? Reason.PRESSURE : Reason.DRIVE_PIPE, sentence);
        }
    }

    /** What the pump's delivery side may see: the dead head where the delivery may shut, else the standing lift. */
    private Pressure pressureOn(PipeType type) {
        return task.limits().deliveryMayShut()
                ? drivePipe(type).peak(task.limits().closingVelocity(), task.ambient())
                : task.ambient().pressureOf(task.lift());
    }

    private DrivePipe drivePipe(PipeType type) {
        return new DrivePipe(
                type, task.driveLength(), task.fall(), task.limits().anchorage());
    }

    List<Check> checks(PipeType type, double driveM3s) {
        DesignLimits limits = task.limits();
        return drivePipe(type)
                .checks(new Flow(driveM3s), limits.closingVelocity(), limits.lengthRule(), task.ambient());
    }

    private String failure(PipeType type, PumpModel model, double drive) {
        if (type.bore().metres() < NOMINAL_SLACK * model.driveBore().metres()) {
            return "the bore of " + type.words() + " is less than the pump's "
                    + Numbers.text(model.driveBore().millimetres()) + " mm.";
        }
        double net = task.fall().metres() - lossM(type, drive);
        if (net < model.leastFall().metres()) {
            return type.words() + " leaves " + Numbers.text(net) + " m of net fall, less than the pump's "
                    + Numbers.text(model.leastFall().metres()) + " m.";
        }
        return checks(type, drive).stream()
                .filter(check -> check.verdict() == Verdict.FAILS)
                .findFirst()
                .map(check -> type.words() + ": " + check.sentence())
                .orElse("");
    }

    private void add(int pump, int number, int pipe, double drive) {
        PricedPump priced = catalogue.pumps().get(pump);
        PricedPipe drivePipe = catalogue.drivePipes().get(pipe);
        PipeType type = drivePipe.type();
        double cost = number
                * (priced.price()
                        + drivePipe.pricePerMetre() * task.driveLength().metres());
        all.add(new Combination(
                priced.model(), pump, number, pipe, drive, task.fall().metres() - lossM(type, drive), cost));
        if (task.limits().deliveryMayShut()) {
            deadHeadM =
                    Math.max(deadHeadM, task.ambient().headOf(pressureOn(type)).metres());
        }
    }

    /** Head that the drive pipe takes at its mean flow, m. */
    private double lossM(PipeType type, double drive) {
        return Friction.headLoss(
                drive,
                type.bore().metres(),
                task.driveLength().metres(),
                type.material().roughness().metres(),
                ENTRANCE,
                task.ambient().water().kinematicViscosity(),
                task.ambient().gravity());
    }

    private void reject(int pump, Reason reason, String sentence) {
        rejected[pump] = new Rejection(catalogue.pumps().get(pump).model().name(), reason, sentence);
    }
}
