package app.ramkeeper.visits;

import app.ramkeeper.shared.Unit;
import java.util.List;

/** What is measured at a visit, with the units it may be given in; the first is the usual one. */
public enum Quantity {
    DRIVE_FLOW(Unit.LITRE_PER_MINUTE, Unit.LITRE_PER_SECOND),
    DELIVERED_FLOW(Unit.LITRE_PER_MINUTE, Unit.LITRE_PER_DAY, Unit.LITRE_PER_SECOND),
    WASTE_FLOW(Unit.LITRE_PER_MINUTE, Unit.LITRE_PER_SECOND),
    BEAT_RATE(Unit.PER_MINUTE),
    DELIVERY_PRESSURE(Unit.BAR, Unit.KILOPASCAL),
    PRE_CHARGE(Unit.BAR, Unit.KILOPASCAL),
    FALL(Unit.METRE, Unit.MILLIMETRE),
    SOURCE_FLOW(Unit.LITRE_PER_MINUTE, Unit.LITRE_PER_SECOND, Unit.LITRE_PER_DAY),
    WATER_TEMPERATURE(Unit.CELSIUS);

    private final List<Unit> units;

    Quantity(Unit... units) {
        this.units = List.of(units);
    }

    /** The units a reading of this quantity may be given in. */
    public List<Unit> units() {
        return units;
    }

    /** The unit pages say it in. */
    public Unit unit() {
        return units.get(0);
    }

    /** True if it can be measured with bucket and watch. */
    public boolean isFlow() {
        return unit() == Unit.LITRE_PER_MINUTE;
    }
}
