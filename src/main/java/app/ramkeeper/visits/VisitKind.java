package app.ramkeeper.visits;

/** What a visit is for. */
public enum VisitKind {
    SURVEY,
    INSTALLATION,
    COMMISSIONING,
    SERVICE,
    CALL_OUT;

    /** True if such a visit can lie before the day an install was commissioned. */
    public boolean mayPrecedeCommissioning() {
        return this == SURVEY || this == INSTALLATION || this == COMMISSIONING;
    }
}
