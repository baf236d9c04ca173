package app.ramkeeper.quotes.price;

/** What sort of thing has a price. The price of TAX is its rate in per cent. */
public enum PriceKind {
    PUMP,
    FITTINGS_KIT,
    PIPE,
    VESSEL,
    VALVE,
    STRAINER,
    TANK,
    LABOUR,
    TRAVEL,
    TAX,
    OTHER;

    /** Whether it belongs to one pump model. */
    public boolean isOfModel() {
        return this == PUMP || this == FITTINGS_KIT;
    }
}
