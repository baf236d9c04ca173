package app.ramkeeper.demo;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An install of the scenario with what is true about it.
 *
 * @param driveLMin drive flow at commissioning
 * @param deliveredLMin delivered flow at commissioning
 */
record DemoInstall(
        UUID id,
        UUID site,
        UUID pump,
        UUID depot,
        @Nullable LocalDate commissioned,
        String water,
        boolean drinking,
        double fallM,
        double liftM,
        double driveLMin,
        double deliveredLMin,
        double beat,
        boolean neglected) {

    double rubberFactor(Scenario scenario) {
        return switch (water) {
            case "SILTY" -> scenario.number("silty.factor");
            case "HARD" -> scenario.number("hard.factor");
            default -> 1;
        };
    }
}
