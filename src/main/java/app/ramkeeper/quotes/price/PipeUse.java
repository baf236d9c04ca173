package app.ramkeeper.quotes.price;

/** What a pipe is laid for. */
public enum PipeUse {
    DRIVE,
    DELIVERY,
    BOTH
}
