package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.price.PipeUse;
import app.ramkeeper.quotes.price.PriceKind;
import app.ramkeeper.quotes.price.PricedModel;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.sizing.design.PricedPump;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.ram.PerformanceTable;
import app.ramkeeper.sizing.ram.PumpModel;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import org.springframework.stereotype.Component;

/** Makes the supply of a day from catalogue and price list. */
@Component
class Supplies {

    private final Prices prices;

    Supplies(Prices prices) {
        this.prices = prices;
    }

    Supply on(LocalDate day) {
        Map<UUID, PricedPump> pumps = new LinkedHashMap<>();
        Map<UUID, PricedModel> models = new LinkedHashMap<>();
        List<String> leftOut = new ArrayList<>();
        List<PricedThing> kits = prices.of(PriceKind.FITTINGS_KIT, day);
        for (PricedModel model : prices.models(day)) {
            if (!model.isWhole()) {
                leftOut.add(model.name() + ": the catalogue lacks a limit or its performance table.");
                continue;
            }
            try {
                double kit = kits.stream()
                        .filter(thing -> model.modelId().equals(thing.modelId()))
                        .mapToDouble(thing -> thing.price().doubleValue())
                        .sum();
                pumps.put(
                        model.modelId(),
                        new PricedPump(pump(model), model.price().doubleValue() + kit));
                models.put(model.modelId(), model);
            } catch (ImpossibleInput wrong) {
                leftOut.add("%s: its performance table cannot be: %s is %s, allowed is %s."
                        .formatted(model.name(), wrong.argument(), wrong.given(), wrong.allowed()));
            }
        }
        return new Supply(
                pumps,
                models,
                Supply.byId(prices.pipes(day, PipeUse.DRIVE)),
                Supply.byId(prices.pipes(day, PipeUse.DELIVERY)),
                prices.of(PriceKind.VESSEL, day),
                leftOut);
    }

    private static PumpModel pump(PricedModel model) {
        return new PumpModel(
                model.name(),
                table(model.performance()),
                Flow.ofLitresPerMinute(known(model.driveFlowMinLMin())),
                Flow.ofLitresPerMinute(known(model.driveFlowMaxLMin())),
                Head.ofMetres(known(model.fallMinM())),
                Head.ofMetres(known(model.fallMaxM())),
                Head.ofMetres(known(model.liftMaxM())),
                Pressure.ofBar(known(model.maxPressureBar())),
                Length.ofMillimetres(known(model.driveBoreMm())));
    }

    private static double known(@org.jspecify.annotations.Nullable Double value) {
        return Objects.requireNonNull(value);
    }

    /** Points that the catalogue lacks take what less fall, less drive flow or more lift gives: never too much. */
    static PerformanceTable table(List<PricedModel.Point> points) {
        double[] falls = axis(points, PricedModel.Point::fallM);
        double[] lifts = axis(points, PricedModel.Point::liftM);
        double[] drives = axis(points, PricedModel.Point::driveFlowLMin);
        double[][][] delivered = new double[falls.length][lifts.length][drives.length];
        for (double[][] byLift : delivered) {
            for (double[] byDrive : byLift) {
                Arrays.fill(byDrive, PerformanceTable.BLANK);
            }
        }
        for (PricedModel.Point point : points) {
            delivered[Arrays.binarySearch(falls, point.fallM())][Arrays.binarySearch(lifts, point.liftM())][
                            Arrays.binarySearch(drives, point.driveFlowLMin())] =
                    point.deliveredLMin();
        }
        fill(falls, lifts, delivered);
        return PerformanceTable.ofDelivered(falls, lifts, drives, delivered);
    }

    private static void fill(double[] falls, double[] lifts, double[][][] delivered) {
        for (int i = 0; i < delivered.length; i++) {
            for (int j = lifts.length - 1; j >= 0; j--) {
                for (int k = 0; k < delivered[i][j].length; k++) {
                    if (Double.isNaN(delivered[i][j][k]) && lifts[j] > falls[i]) {
                        double lessFall = i == 0 ? Double.NaN : delivered[i - 1][j][k];
                        double moreLift = j + 1 == lifts.length ? Double.NaN : delivered[i][j + 1][k];
                        double lessDrive = k == 0 ? Double.NaN : delivered[i][j][k - 1];
                        delivered[i][j][k] = DoubleStream.of(lessFall, moreLift, lessDrive)
                                .filter(value -> !Double.isNaN(value))
                                .max()
                                .orElse(PerformanceTable.BLANK);
                    }
                }
            }
        }
    }

    private static double[] axis(List<PricedModel.Point> points, ToDoubleFunction<PricedModel.Point> value) {
        return points.stream().mapToDouble(value).distinct().sorted().toArray();
    }
}
