package app.ramkeeper.sizing.design;

/**
 * Why a pump model is in no design of the front.
 *
 * @param model name of the model
 * @param reason what kind, for programs; the furthest that any of its combinations came
 * @param sentence the same in a sentence, for people
 */
public record Rejection(String model, Reason reason, String sentence) {

    /** How far the best of its combinations came. */
    public enum Reason {
        /** The fall is outside its range. */
        FALL,
        /** The lift is above its range. */
        LIFT,
        /** The source gives less than its least drive flow. */
        SOURCE,
        /** It does not bear the pressure. */
        PRESSURE,
        /** No drive pipe of the catalogue keeps the rules with it. */
        DRIVE_PIPE,
        /** Not even without friction does it deliver the demand. */
        DEMAND,
        /** No delivery line of the catalogue brings the demand at the head it has to spare. */
        DELIVERY_LINE,
        /** Another design delivers as much for less. */
        COST
    }
}
