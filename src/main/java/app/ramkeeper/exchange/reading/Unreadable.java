package app.ramkeeper.exchange.reading;

/** Says in a sentence for the person why a file is not read. Nothing of it has been kept. */
public final class Unreadable extends RuntimeException {

    /** What is wrong with the file as such. */
    public enum Reason {
        TOO_LARGE,
        OTHER_KIND,
        BROKEN
    }

    private final Reason reason;

    public Unreadable(Reason reason, String sentence) {
        super(sentence);
        this.reason = reason;
    }

    public static Unreadable tooLarge(String sentence) {
        return new Unreadable(Reason.TOO_LARGE, sentence);
    }

    public static Unreadable otherKind(String sentence) {
        return new Unreadable(Reason.OTHER_KIND, sentence);
    }

    public static Unreadable broken(String sentence) {
        return new Unreadable(Reason.BROKEN, sentence);
    }

    public Reason reason() {
        return reason;
    }

    public String sentence() {
        return String.valueOf(getMessage());
    }
}
