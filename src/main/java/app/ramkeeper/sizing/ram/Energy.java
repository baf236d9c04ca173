package app.ramkeeper.sizing.ram;

/**
 * Where the energy of one beat went, J. What comes in is the sum of the rest: a test holds the model to that.
 *
 * @param given by the fall to all the water that left the intake
 * @param lifted kept by the delivered water at the lift
 * @param pipe lost in the drive pipe
 * @param wasteValve lost through the waste valve
 * @param deliveryValve lost through the delivery valve
 */
public record Energy(double given, double lifted, double pipe, double wasteValve, double deliveryValve) {

    /** What is unaccounted for as a share of what was given; rounding only. */
    public double gap() {
        return given == 0 ? 0 : (given - lifted - pipe - wasteValve - deliveryValve) / given;
    }
}
