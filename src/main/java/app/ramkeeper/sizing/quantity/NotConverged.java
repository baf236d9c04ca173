package app.ramkeeper.sizing.quantity;

/** An iteration that reached its cap without an answer; never expected, always named. */
public final class NotConverged extends IllegalStateException {

    private static final long serialVersionUID = 1L;

    /** Says what was sought and after how many steps it was given up. */
    public NotConverged(String sought, int steps) {
        super("No " + sought + " found within " + steps + " steps");
    }
}
