package app.ramkeeper.visits;

/** How the office tried to reach a customer. */
public enum ContactBy {
    PHONE,
    MESSAGE,
    MAIL,
    IN_PERSON
}
