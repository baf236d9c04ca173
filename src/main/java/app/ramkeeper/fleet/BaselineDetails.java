package app.ramkeeper.fleet;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What was measured when a configuration was commissioned, in SI; at least one quantity is there.
 *
 * @param driveFlowSi m3/s
 * @param deliveredFlowSi m3/s
 * @param beatRateSi Hz
 * @param deliveryPressureSi Pa
 * @param report the visit report it was taken from
 */
public record BaselineDetails(
        LocalDate takenOn,
        @Nullable Double driveFlowSi,
        @Nullable Double deliveredFlowSi,
        @Nullable Double beatRateSi,
        @Nullable Double deliveryPressureSi,
        @Nullable UUID report) {}
