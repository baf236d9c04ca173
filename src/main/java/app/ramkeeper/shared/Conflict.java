package app.ramkeeper.shared;

import org.jspecify.annotations.Nullable;

/** Says that a step is not possible in the present state (409). The message is written for the person and is shown. */
public class Conflict extends RuntimeException {

    private final @Nullable String field;

    public Conflict(String sentence) {
        this(null, sentence);
    }

    /** A conflict that a form shows beside one of its fields, if it has it. */
    public Conflict(@Nullable String field, String sentence) {
        super(sentence);
        this.field = field;
    }

    public @Nullable String field() {
        return field;
    }
}
