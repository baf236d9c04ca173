package app.ramkeeper.quotes.offer;

/** By which way a customer answered. */
public enum Answered {
    LINK,
    PHONE,
    TEXT,
    PAPER
}
