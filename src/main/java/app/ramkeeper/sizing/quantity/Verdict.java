package app.ramkeeper.sizing.quantity;

/** How a number stands against its limit. */
public enum Verdict {
    /** Within the limit with room to spare. */
    HOLDS,
    /** Within the limit, but close to it. */
    CLOSE,
    /** Beyond the limit. */
    FAILS;

    /** The worse of the two. */
    public Verdict and(Verdict other) {
        return compareTo(other) >= 0 ? this : other;
    }
}
