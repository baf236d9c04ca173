package app.ramkeeper.shared;

/** Says that a step is not possible in the present state (409). The message is written for the person and is shown. */
public class Conflict extends RuntimeException {

    public Conflict(String sentence) {
        super(sentence);
    }
}
