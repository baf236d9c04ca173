package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.price.PricedModel;
import app.ramkeeper.quotes.price.PricedPipeRow;
import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.sizing.design.Battery;
import app.ramkeeper.sizing.design.BatteryDuty;
import app.ramkeeper.sizing.design.DeliveryForecast;
import app.ramkeeper.sizing.design.DesignLimits;
import app.ramkeeper.sizing.design.PumpUnit;
import app.ramkeeper.sizing.design.Spread;
import app.ramkeeper.sizing.drive.DrivePipe;
import app.ramkeeper.sizing.line.DeliveryLine;
import app.ramkeeper.sizing.line.LineLoad;
import app.ramkeeper.sizing.line.LineResult;
import app.ramkeeper.sizing.line.Outlet;
import app.ramkeeper.sizing.line.Stretch;
import app.ramkeeper.sizing.line.StretchResult;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.ram.ColumnFriction;
import app.ramkeeper.sizing.ram.Cycle;
import app.ramkeeper.sizing.ram.CycleSetup;
import app.ramkeeper.sizing.ram.PumpModel;
import app.ramkeeper.sizing.ram.RigidCycle;
import app.ramkeeper.sizing.ram.WasteValve;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Works a selection out against a survey: duty, line, vessel, forecast, and every rule. */
final class Workout {

    /** Same numbers each time the page is opened. */
    private static final long SEED = 1_772;

    private static final double ENTRANCE = 0.5;

    /** Loss of an open waste valve and of a delivery valve, in velocity heads of the drive pipe: assumed, no source. */
    private static final double WASTE_VALVE_LOSS = 3, DELIVERY_VALVE_LOSS = 2;

    private final Survey survey;
    private final Supply supply;
    private final Selection selection;
    private final DesignLimits limits;
    private final PumpModel pump;
    private final PricedModel model;
    private final PipeType drive;

    private Workout(Survey survey, Supply supply, Selection selection) {
        this.survey = survey;
        this.supply = supply;
        this.selection = selection;
        this.limits = limits(survey);
        this.pump = Objects.requireNonNull(supply.pumps().get(selection.pumpModelId()))
                .model();
        this.model = Objects.requireNonNull(supply.models().get(selection.pumpModelId()));
        this.drive = Objects.requireNonNull(supply.drivePipes().get(selection.drivePipeId()))
                .forSearch()
                .type();
    }

    /** The office's rules, with what the survey says of pipe and float. */
    static DesignLimits limits(Survey survey) {
        DesignLimits usual = DesignLimits.usual();
        return new DesignLimits(
                usual.lengthRule(),
                usual.anchorage(),
                usual.closingVelocity(),
                usual.mostVelocity(),
                survey.mostPumps(),
                Temperature.ofCelsius(survey.pipeWallC()),
                survey.mayShut(),
                usual.joint());
    }

    /** All that follows from a selection whose parts are in the supply; the forecast of so many trials. */
    static Worked of(Survey survey, Supply supply, Selection selection, int evaluations) {
        return new Workout(survey, supply, selection).work(evaluations);
    }

    private Worked work(int evaluations) {
        Flow source = survey.usable().flow();
        DeliveryLine line = line();
        PipeRun run = PipeRun.of(drive, Length.ofMetres(survey.driveLengthM()), ENTRANCE);
        double most = pump.mostDrive().cubicMetresPerSecond()
                * selection.pumps()
                * survey.fall().value()
                / survey.lift().value();
        Battery battery = new Battery(
                Collections.nCopies(selection.pumps(), new PumpUnit(pump, run)),
                new Head(survey.fall().value()),
                line.lift(),
                new LineTable(line, survey.ambient(), most),
                Optional.empty(),
                survey.ambient());
        BatteryDuty duty = battery.duty(
                source, IntStream.range(0, selection.pumps()).boxed().toList());
        DrivePipe pipe = new DrivePipe(
                drive,
                Length.ofMetres(survey.driveLengthM()),
                new Head(survey.fall().value()),
                limits.anchorage());
        Pressure peak = pipe.peak(limits.closingVelocity(), survey.ambient());
        Optional<Pressure> shut = survey.mayShut() ? Optional.of(peak) : Optional.empty();
        LineResult result = line.under(new LineLoad(duty.delivered(), survey.ambient(), limits.pipeWall(), shut));
        CycleSetup setup = new CycleSetup(
                new Head(survey.fall().value()),
                duty.head(),
                run,
                ColumnFriction.COLEBROOK_WHITE,
                pipe.waveSpeed(survey.ambient()),
                new WasteValve.Snap(limits.closingVelocity(), WASTE_VALVE_LOSS),
                DELIVERY_VALVE_LOSS,
                survey.ambient());
        Cycle cycle = RigidCycle.run(setup);
        Vessels.Advice vessel = Vessels.advise(
                model.vesselKind(),
                line.lift(),
                duty.head(),
                duty.delivered().cubicMetresPerSecond() / selection.pumps(),
                cycle,
                shut.orElse(survey.ambient().pressureOf(duty.head())),
                supply.vessels(),
                survey.ambient());
        DeliveryForecast forecast = DeliveryForecast.of(battery, spread(), SEED, evaluations);
        return new Worked(
                selection,
                pump.name(),
                drive,
                battery,
                duty,
                result,
                forecast,
                vessel.vessel().orElse(null),
                setup,
                checks(duty, result, pipe, shut, vessel, forecast),
                cost(line),
                Stream.of(
                                duty.notes().stream().map(Note::sentence),
                                pipe.notes(each(duty)).stream().map(Note::sentence),
                                result.notes().stream().map(Note::sentence),
                                forecast.notes().stream().map(Note::sentence),
                                vessel.notes().stream())
                        .flatMap(s -> s)
                        .distinct()
                        .toList());
    }

    private DeliveryLine line() {
        List<Stretch> stretches = selection.delivery().stream()
                .map(part -> Stretch.of(
                        part.toM(),
                        Objects.requireNonNull(supply.deliveryPipes().get(part.pipeId()))
                                .forSearch()
                                .type()))
                .toList();
        return new DeliveryLine(
                survey.ground(), stretches, List.of(Outlet.tank(survey.ground().endM(), survey.tankLevelM())));
    }

    private Spread spread() {
        return new Spread(
                survey.fall(),
                survey.lift(),
                survey.measured().cubicMetresPerSecond(),
                survey.dry().share(),
                survey.dry().mustStay().cubicMetresPerSecond(),
                Spread.MODEL_PRIOR,
                Spread.USUAL_RUNNING);
    }

    private List<Check> checks(
            BatteryDuty duty,
            LineResult line,
            DrivePipe pipe,
            Optional<Pressure> shut,
            Vessels.Advice vessel,
            DeliveryForecast forecast) {
        Flow each = each(duty);
        double demand = survey.demand().litresPerDay();
        List<Check> checks = new ArrayList<>();
        checks.add(Check.atLeast(
                "Delivered in the dry month against what is wanted",
                duty.delivered().litresPerDay(),
                demand,
                "l/day"));
        checks.add(Check.atLeast(
                "Promise of the dry month (nine in ten) against what is wanted",
                forecast.p10().litresPerDay(),
                demand,
                "l/day"));
        checks.addAll(pump.checks(new Head(survey.fall().value()), duty.head(), each));
        checks.addAll(pipe.checks(each, limits.closingVelocity(), limits.lengthRule(), survey.ambient()));
        if (drive.bore().metres() < 0.9 * pump.driveBore().metres()) {
            checks.add(Check.atLeast(
                    "Bore of the drive pipe against the pump's, less a tenth",
                    drive.bore().millimetres(),
                    0.9 * pump.driveBore().millimetres(),
                    "mm"));
        }
        Pressure onPump = shut.orElse(survey.ambient().pressureOf(duty.head()));
        checks.add(Check.atMost(
                shut.isPresent() ? "Pressure on the pump with the delivery shut" : "Pressure on the pump",
                onPump.bar(),
                pump.rating().bar(),
                "bar"));
        checks.addAll(line.allChecks());
        double fastest = line.stretches().stream()
                .mapToDouble(StretchResult::velocityMs)
                .max()
                .orElse(0);
        checks.add(Check.atMost("Velocity in the delivery pipe", fastest, limits.mostVelocity(), "m/s"));
        vessel.broken().ifPresent(checks::add);
        if (survey.drinkingWater()) {
            checks.addAll(fitForDrinking());
        }
        return checks;
    }

    private Flow each(BatteryDuty duty) {
        return duty.pumps().isEmpty()
                ? new Flow(survey.usable().flow().cubicMetresPerSecond() / selection.pumps())
                : duty.pumps().get(0).drive();
    }

    private List<Check> fitForDrinking() {
        return selection.delivery().stream()
                .map(part -> Objects.requireNonNull(supply.deliveryPipes().get(part.pipeId())))
                .filter(row -> !row.drinkingWaterFit())
                .map(PricedPipeRow::name)
                .distinct()
                .map(name -> new Check(
                        "Fit for drinking water",
                        Verdict.FAILS,
                        0,
                        0,
                        "",
                        name + " is not marked as fit for drinking water."))
                .toList();
    }

    private double cost(DeliveryLine line) {
        double drivePrice = Objects.requireNonNull(supply.drivePipes().get(selection.drivePipeId()))
                .price()
                .doubleValue();
        double cost = selection.pumps()
                * (Objects.requireNonNull(supply.pumps().get(selection.pumpModelId()))
                                .price()
                        + drivePrice * survey.driveLengthM());
        double from = 0;
        for (Selection.Part part : selection.delivery()) {
            double price = Objects.requireNonNull(supply.deliveryPipes().get(part.pipeId()))
                    .price()
                    .doubleValue();
            cost += price * Slope.length(line.ground(), from, part.toM());
            from = part.toM();
        }
        return cost;
    }
}
