package app.ramkeeper.rounds.solver;

/**
 * One technician's (or vehicle's) day to be filled.
 *
 * @param start row of the travel matrix where it begins
 * @param end row where it ends
 * @param from earliest leaving
 * @param until latest return
 * @param longest longest time from leaving to return; waiting counts, leaving late is allowed
 * @param capacity most load
 * @param period which of a job's windows holds
 * @param fixedCost cost of using it at all
 * @param minuteCost cost of each minute from its earliest leaving to its return, so that being home early pays
 */
public record Round(
        int start,
        int end,
        double from,
        double until,
        double longest,
        double capacity,
        int period,
        double fixedCost,
        double minuteCost) {

    public Round {
        if (!(until >= from)) {
            throw new IllegalArgumentException("A round must end after it starts: from " + from + " until " + until);
        }
    }
}
