package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.price.PricedModel;
import app.ramkeeper.quotes.price.PricedPipeRow;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.sizing.design.DesignCatalogue;
import app.ramkeeper.sizing.design.PricedPump;
import app.ramkeeper.sizing.line.Stretch;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.ram.PumpModel;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What can be bought on a day, as the search for designs takes it.
 *
 * @param pumps models that can be reckoned with; the price holds the fittings kit
 * @param models the same as the catalogue has them
 * @param vessels smallest first
 * @param leftOut models that cannot be reckoned with, each with the reason in a sentence
 */
record Supply(
        Map<UUID, PricedPump> pumps,
        Map<UUID, PricedModel> models,
        Map<UUID, PricedPipeRow> drivePipes,
        Map<UUID, PricedPipeRow> deliveryPipes,
        List<PricedThing> vessels,
        List<String> leftOut) {

    /** Whether there is anything to choose from. */
    boolean isEnough() {
        return !pumps.isEmpty() && !drivePipes.isEmpty() && !deliveryPipes.isEmpty();
    }

    DesignCatalogue catalogue() {
        return new DesignCatalogue(
                List.copyOf(pumps.values()),
                drivePipes.values().stream().map(PricedPipeRow::forSearch).toList(),
                deliveryPipes.values().stream()
                        .limit(100)
                        .map(PricedPipeRow::forSearch)
                        .toList());
    }

    UUID idOf(PumpModel model) {
        return pumps.entrySet().stream()
                .filter(entry -> entry.getValue().model().name().equals(model.name()))
                .findFirst()
                .orElseThrow()
                .getKey();
    }

    UUID driveId(PipeType type) {
        return id(drivePipes, type).orElseThrow();
    }

    Selection.Part part(Stretch stretch) {
        return new Selection.Part(id(deliveryPipes, stretch.type()).orElseThrow(), stretch.toM());
    }

    private static Optional<UUID> id(Map<UUID, PricedPipeRow> pipes, PipeType type) {
        return pipes.entrySet().stream()
                .filter(entry -> entry.getValue().forSearch().type().equals(type))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    static Map<UUID, PricedPipeRow> byId(List<PricedPipeRow> rows) {
        Map<UUID, PricedPipeRow> map = new LinkedHashMap<>();
        rows.forEach(row -> map.put(row.id(), row));
        return map;
    }
}
