package app.ramkeeper.visits.stock;

/** What people do to stock by hand. */
public enum StockStep {
    RECEIVE,
    MOVE,
    COUNT,
    SCRAP;

    /** Its word in addresses. */
    public String path() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    static StockStep of(String path) {
        return valueOf(path.toUpperCase(java.util.Locale.ROOT));
    }
}
