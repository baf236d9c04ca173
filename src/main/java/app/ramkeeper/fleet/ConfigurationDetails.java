package app.ramkeeper.fleet;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import org.jspecify.annotations.Nullable;

/**
 * How an install is laid out and set; every part may be unknown.
 *
 * @param fallM water level at the intake above the waste valve
 * @param liftM highest point of the delivery above the pump
 * @param valveSetting in the words of the pump: turns, stroke, spring
 */
@Embeddable
public record ConfigurationDetails(
        @Column(name = "fall_m") @Nullable Double fallM,
        @Column(name = "lift_m") @Nullable Double liftM,
        @Nullable String drivePipeMaterial,
        @Column(name = "drive_pipe_bore_mm") @Nullable Double drivePipeBoreMm,
        @Column(name = "drive_pipe_length_m") @Nullable Double drivePipeLengthM,
        @Nullable String deliveryPipe,
        @Column(name = "delivery_pipe_bore_mm") @Nullable Double deliveryPipeBoreMm,
        @Column(name = "delivery_pipe_length_m") @Nullable Double deliveryPipeLengthM,
        @Nullable String valveSetting,
        @Column(name = "design_drive_flow_l_min") @Nullable Double designDriveFlowLMin,
        @Column(name = "design_delivered_l_min") @Nullable Double designDeliveredLMin,
        @Column(name = "vessel_precharge_bar") @Nullable Double vesselPrechargeBar) {

    /** Nothing is known. */
    public static ConfigurationDetails unknown() {
        return of(null, null);
    }

    /** The same with the valve set so. */
    ConfigurationDetails withValveSetting(String setting) {
        return new ConfigurationDetails(
                fallM,
                liftM,
                drivePipeMaterial,
                drivePipeBoreMm,
                drivePipeLengthM,
                deliveryPipe,
                deliveryPipeBoreMm,
                deliveryPipeLengthM,
                setting,
                designDriveFlowLMin,
                designDeliveredLMin,
                vesselPrechargeBar);
    }

    /** Only fall and lift are known. */
    public static ConfigurationDetails of(@Nullable Double fallM, @Nullable Double liftM) {
        return new ConfigurationDetails(fallM, liftM, null, null, null, null, null, null, null, null, null, null);
    }
}
