package app.ramkeeper.sizing.quantity;

/** A value that cannot be: names the argument, what was given and what is allowed. */
public final class ImpossibleInput extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String argument;
    private final String given;
    private final String allowed;

    /**
     * Describes the refused value.
     *
     * @param argument the argument's name in the words of the trade, such as "bore"
     * @param given the value as it came
     * @param allowed what would be accepted, such as "more than 0 m"
     */
    public ImpossibleInput(String argument, Object given, String allowed) {
        super(argument + " is " + given + ", allowed is " + allowed);
        this.argument = argument;
        this.given = String.valueOf(given);
        this.allowed = allowed;
    }

    /** The argument's name. */
    public String argument() {
        return argument;
    }

    /** The value as it came. */
    public String given() {
        return given;
    }

    /** What would be accepted. */
    public String allowed() {
        return allowed;
    }
}
