package app.ramkeeper.fleet;

/** What is noted at a site in rows of its own and can be struck out again. */
public enum SiteNote {
    HAZARD("site_hazards", "hazard"),
    WINDOW("access_windows", "access window"),
    CLOSED("closed_periods", "closed period");

    private final String table;
    private final String word;

    SiteNote(String table, String word) {
        this.table = table;
        this.word = word;
    }

    String table() {
        return table;
    }

    String word() {
        return word;
    }
}
