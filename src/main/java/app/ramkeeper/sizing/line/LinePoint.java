package app.ramkeeper.sizing.line;

/**
 * A point of the line with its heads, all in m of water.
 *
 * @param chainageM distance from the pump
 * @param levelM level of the pipe
 * @param gradeM level to which the water would stand in a tube there while running, air let in at high points
 * @param runningHeadM grade less level: gauge head while running, 0 where the pipe runs part full
 * @param fullPipeHeadM the same if no air gets in and the line runs full as a siphon; may be negative
 * @param staticHeadM gauge head at rest, the line full and its outlets shut
 * @param shutHeadM gauge head with the pump beating against a shut delivery; NaN if it cannot be shut
 */
public record LinePoint(
        double chainageM,
        double levelM,
        double gradeM,
        double runningHeadM,
        double fullPipeHeadM,
        double staticHeadM,
        double shutHeadM) {

    /** The greatest of running, static and shut head, m. */
    public double greatestHeadM() {
        double most = Math.max(runningHeadM, staticHeadM);
        return Double.isNaN(shutHeadM) ? most : Math.max(most, shutHeadM);
    }
}
