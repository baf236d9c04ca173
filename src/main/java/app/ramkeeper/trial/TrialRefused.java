package app.ramkeeper.trial;

/** The trial run cannot start, for a reason that the person at the terminal can mend; the message says how. */
final class TrialRefused extends RuntimeException {

    private static final long serialVersionUID = 1L;

    TrialRefused(String message) {
        super(message);
    }
}
