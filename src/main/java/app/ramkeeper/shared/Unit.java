package app.ramkeeper.shared;

/** Units that people read and type, each with its factor and offset to SI: {@code si = value * factor + offset}. */
public enum Unit {
    LITRE_PER_MINUTE("l/min", "m3/s", 1e-3 / 60, 0),
    LITRE_PER_DAY("l/day", "m3/s", 1e-3 / 86_400, 0),
    LITRE_PER_SECOND("l/s", "m3/s", 1e-3, 0),
    METRE("m", "m", 1, 0),
    MILLIMETRE("mm", "m", 1e-3, 0),
    BAR("bar", "Pa", 1e5, 0),
    KILOPASCAL("kPa", "Pa", 1e3, 0),
    PER_MINUTE("/min", "Hz", 1.0 / 60, 0),
    CELSIUS("°C", "K", 1, 273.15),
    PERCENT("%", "1", 1e-2, 0);

    private final String symbol;
    private final String siSymbol;
    private final double factor;
    private final double offset;

    Unit(String symbol, String siSymbol, double factor, double offset) {
        this.symbol = symbol;
        this.siSymbol = siSymbol;
        this.factor = factor;
        this.offset = offset;
    }

    /** How pages write it. */
    public String symbol() {
        return symbol;
    }

    /** True if both units measure the same kind of quantity. */
    public boolean comparableWith(Unit other) {
        return siSymbol.equals(other.siSymbol);
    }

    /** The value in SI. */
    public double toSi(double value) {
        return value * factor + offset;
    }

    /** The value in this unit. */
    public double fromSi(double si) {
        return (si - offset) / factor;
    }
}
