package app.ramkeeper.visits;

import app.ramkeeper.shared.Unit;
import java.util.Optional;

/** What a reading can be at all: its unit, its sign, and bounds beyond which only a slip of the pen lies. */
public final class Limits {

    private Limits() {}

    /** Says what is impossible about a reading, if anything. */
    public static Optional<String> problem(RecordVisit.Reading reading) {
        Quantity quantity = reading.quantity();
        if (!quantity.units().contains(reading.value().unit())) {
            return Optional.of(
                    "This cannot be measured in " + reading.value().unit().symbol() + ".");
        }
        double si = reading.value().si();
        double least = least(quantity);
        double most = most(quantity);
        if (!(si >= least && si <= most) || reading.value().value().scale() > 12) {
            Unit unit = quantity.unit();
            return Optional.of("Give a value from %.0f to %.0f %s."
                    .formatted(unit.fromSi(least), unit.fromSi(most), unit.symbol()));
        }
        return bucket(reading);
    }

    private static Optional<String> bucket(RecordVisit.Reading reading) {
        RecordVisit.Bucket bucket = reading.bucket();
        if (bucket == null) {
            return Optional.empty();
        }
        if (!reading.quantity().isFlow()) {
            return Optional.of("Only a flow is measured with bucket and watch.");
        }
        if (bucket.seconds().signum() <= 0 || bucket.litres().signum() < 0) {
            return Optional.of("Bucket and watch: give the litres caught and the seconds it took.");
        }
        double flow = Unit.LITRE_PER_SECOND.toSi(
                bucket.litres().doubleValue() / bucket.seconds().doubleValue());
        return Math.abs(flow - reading.value().si()) <= 0.02 * flow + 1e-9
                ? Optional.empty()
                : Optional.of("The value does not match the litres and seconds given.");
    }

    private static double least(Quantity quantity) {
        return quantity == Quantity.WATER_TEMPERATURE ? Unit.CELSIUS.toSi(-5) : 0;
    }

    private static double most(Quantity quantity) {
        return switch (quantity) {
            case DRIVE_FLOW, DELIVERED_FLOW, WASTE_FLOW, SOURCE_FLOW -> Unit.LITRE_PER_MINUTE.toSi(100_000);
            case BEAT_RATE -> Unit.PER_MINUTE.toSi(600);
            case DELIVERY_PRESSURE, PRE_CHARGE -> Unit.BAR.toSi(100);
            case FALL -> 200;
            case WATER_TEMPERATURE -> Unit.CELSIUS.toSi(60);
        };
    }
}
