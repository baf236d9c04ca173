package app.ramkeeper.visits.record;

import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import java.util.List;
import java.util.UUID;

/**
 * One reading the form asks for: what, where, at which install. The first five stand open, the others are folded away.
 *
 * @param name prefix of its fields' names
 */
public record ReadingField(UUID install, Quantity quantity, MeasuredAt place, boolean usual) {

    private record Asked(Quantity quantity, MeasuredAt place, boolean usual) {}

    private static final List<Asked> ASKED = List.of(
            new Asked(Quantity.DRIVE_FLOW, MeasuredAt.PUMP, true),
            new Asked(Quantity.DELIVERED_FLOW, MeasuredAt.PUMP, true),
            new Asked(Quantity.DELIVERED_FLOW, MeasuredAt.TANK, true),
            new Asked(Quantity.BEAT_RATE, MeasuredAt.PUMP, true),
            new Asked(Quantity.DELIVERY_PRESSURE, MeasuredAt.PUMP, true),
            new Asked(Quantity.PRE_CHARGE, MeasuredAt.PUMP, false),
            new Asked(Quantity.WASTE_FLOW, MeasuredAt.PUMP, false),
            new Asked(Quantity.SOURCE_FLOW, MeasuredAt.SOURCE, false),
            new Asked(Quantity.FALL, MeasuredAt.PUMP, false),
            new Asked(Quantity.WATER_TEMPERATURE, MeasuredAt.SOURCE, false));

    /** All readings that can be put down for an install. */
    public static List<ReadingField> of(UUID install) {
        return ASKED.stream()
                .map(asked -> new ReadingField(install, asked.quantity(), asked.place(), asked.usual()))
                .toList();
    }

    public String name() {
        return "reading." + install + "." + quantity + "." + place;
    }

    public List<Unit> units() {
        return quantity.units();
    }
}
