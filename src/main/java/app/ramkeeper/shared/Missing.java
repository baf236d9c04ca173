package app.ramkeeper.shared;

/** Says that the thing asked for is not there, or not for this person: the answer is the same (404). */
public class Missing extends RuntimeException {

    private final String thing;

    public Missing(String thing, Object id) {
        super("No such " + thing + ": " + id);
        this.thing = thing;
    }

    /** The kind of thing in a word of the trade, such as "site"; safe to show. */
    public String thing() {
        return thing;
    }
}
