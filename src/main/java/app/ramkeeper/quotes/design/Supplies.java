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
import app.ramkeeper.sizing.ram.CatalogueTable;
import app.ramkeeper.sizing.ram.PerformanceTable;
import app.ramkeeper.sizing.ram.PumpModel;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
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

    private static PerformanceTable table(List<PricedModel.Point> points) {
        return new CatalogueTable(points.stream()
                        .map(p -> new CatalogueTable.Entry(p.fallM(), p.liftM(), p.driveFlowLMin(), p.deliveredLMin()))
                        .toList())
                .filled();
    }
}
