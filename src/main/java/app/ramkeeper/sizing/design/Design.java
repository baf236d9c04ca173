package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.line.Stretch;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.ram.PumpModel;
import java.util.List;

/**
 * A design that keeps every limit and delivers at least the demand.
 *
 * @param pump model
 * @param number of pumps side by side
 * @param drivePipe of each pump
 * @param stretches of the delivery line from the pump on
 * @param cost of pumps and pipes by the catalogue's prices
 * @param drive flow of all pumps together
 * @param delivered by all pumps together
 * @param head at the pumps, the line's friction counted in
 * @param checks drive pipe and pump against their limits
 */
public record Design(
        PumpModel pump,
        int number,
        PipeType drivePipe,
        List<Stretch> stretches,
        double cost,
        Flow drive,
        Flow delivered,
        Head head,
        List<Check> checks) {

    /** Keeps its own copies. */
    public Design {
        stretches = List.copyOf(stretches);
        checks = List.copyOf(checks);
    }
}
