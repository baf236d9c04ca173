package app.ramkeeper.sizing.quantity;

/**
 * What the reader of a result must know about how it came to be.
 *
 * @param code what kind of note, for programs
 * @param sentence the same in a sentence, for people
 */
public record Note(Code code, String sentence) {

    /** Kinds of note. */
    public enum Code {
        /** An input lies outside the range a formula or table was made for. */
        OUTSIDE_RANGE,
        /** The flow is between laminar and turbulent, where losses wander. */
        TRANSITION,
        /** A value nobody gave was taken as usual. */
        ASSUMED,
        /** The rule is common practice; no source stands behind it. */
        COMMON_PRACTICE,
        /** Beyond what this library may decide; a qualified person must. */
        ASK_ENGINEER,
        /** Something that can hurt people or break things. */
        CAUTION
    }

    /** Refuses a sentence without text. */
    public Note {
        if (sentence.isBlank()) {
            throw new ImpossibleInput("sentence", "blank", "a sentence");
        }
    }

    /** Note of an input outside the range of a formula, with the numbers. */
    public static Note outside(String formula, String input, double value, double low, double high, String unit) {
        return new Note(
                Code.OUTSIDE_RANGE,
                "%s is %s, outside the %s to %s that %s was made for."
                        .formatted(
                                input,
                                Numbers.text(value, unit),
                                Numbers.text(low),
                                Numbers.text(high, unit),
                                formula));
    }
}
