package app.ramkeeper.exchange.reading;

/** Names of columns as spreadsheets show them. */
public final class Columns {

    private Columns() {}

    /** "A" for 0, "AA" for 26. */
    public static String letter(int index) {
        StringBuilder letters = new StringBuilder();
        for (int rest = index; rest >= 0; rest = rest / 26 - 1) {
            letters.insert(0, (char) ('A' + rest % 26));
        }
        return letters.toString();
    }
}
