package app.ramkeeper.bench.rounds;

import app.ramkeeper.rounds.solver.OpenProblem;
import com.graphhopper.jsprit.core.problem.Location;
import com.graphhopper.jsprit.core.problem.cost.AbstractForwardVehicleRoutingTransportCosts;
import com.graphhopper.jsprit.core.problem.driver.Driver;
import com.graphhopper.jsprit.core.problem.vehicle.Vehicle;

/** Our travel matrix, which need not be symmetric, for jsprit. */
final class JspritTravel extends AbstractForwardVehicleRoutingTransportCosts {

    private final OpenProblem problem;

    JspritTravel(OpenProblem problem) {
        this.problem = problem;
    }

    @Override
    public double getTransportTime(Location from, Location to, double leaves, Driver driver, Vehicle vehicle) {
        return problem.time(from.getIndex(), to.getIndex());
    }

    @Override
    public double getTransportCost(Location from, Location to, double leaves, Driver driver, Vehicle vehicle) {
        return problem.cost(from.getIndex(), to.getIndex());
    }

    @Override
    public double getDistance(Location from, Location to, double leaves, Vehicle vehicle) {
        return problem.cost(from.getIndex(), to.getIndex());
    }

    @Override
    public double getBackwardTransportTime(Location from, Location to, double arrives, Driver driver, Vehicle vehicle) {
        return problem.time(from.getIndex(), to.getIndex());
    }

    @Override
    public double getBackwardTransportCost(Location from, Location to, double arrives, Driver driver, Vehicle vehicle) {
        return problem.cost(from.getIndex(), to.getIndex());
    }
}
