package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.BaselineDetails;
import app.ramkeeper.fleet.ConfigurationDetails;
import app.ramkeeper.shared.Unit;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Layout and setting with the first readings, in the units people read. */
record ConfigurationForm(
        @Nullable Integer version,
        @PastOrPresent @Nullable LocalDate from,
        @Size(max = 1000) @Nullable String reason,
        @Positive @DecimalMax("200") @Nullable Double fallM,
        @Positive @DecimalMax("1000") @Nullable Double liftM,
        @Size(max = 100) @Nullable String drivePipeMaterial,
        @Positive @DecimalMax("1000") @Nullable Double drivePipeBoreMm,
        @Positive @DecimalMax("1000") @Nullable Double drivePipeLengthM,
        @Size(max = 200) @Nullable String deliveryPipe,
        @Positive @DecimalMax("1000") @Nullable Double deliveryPipeBoreMm,
        @Positive @DecimalMax("50000") @Nullable Double deliveryPipeLengthM,
        @Size(max = 200) @Nullable String valveSetting,
        @Positive @DecimalMax("100000") @Nullable Double designDriveFlowLMin,
        @Positive @DecimalMax("100000") @Nullable Double designDeliveredLMin,
        @PositiveOrZero @DecimalMax("100") @Nullable Double vesselPrechargeBar,
        @PastOrPresent @Nullable LocalDate takenOn,
        @Positive @DecimalMax("100000") @Nullable Double driveFlow,
        @Positive @DecimalMax("100000") @Nullable Double deliveredFlow,
        @Positive @DecimalMax("500") @Nullable Double beatRate,
        @Positive @DecimalMax("200") @Nullable Double deliveryPressure) {

    static ConfigurationForm of(ConfigurationDetails d, @Nullable Integer version, @Nullable String reason) {
        return of(d, version, reason, null);
    }

    static ConfigurationForm of(
            ConfigurationDetails d,
            @Nullable Integer version,
            @Nullable String reason,
            @Nullable BaselineDetails baseline) {
        return new ConfigurationForm(
                version,
                null,
                reason,
                d.fallM(),
                d.liftM(),
                d.drivePipeMaterial(),
                d.drivePipeBoreMm(),
                d.drivePipeLengthM(),
                d.deliveryPipe(),
                d.deliveryPipeBoreMm(),
                d.deliveryPipeLengthM(),
                d.valveSetting(),
                d.designDriveFlowLMin(),
                d.designDeliveredLMin(),
                d.vesselPrechargeBar(),
                baseline == null ? null : baseline.takenOn(),
                baseline == null ? null : read(baseline.driveFlowSi(), Unit.LITRE_PER_MINUTE),
                baseline == null ? null : read(baseline.deliveredFlowSi(), Unit.LITRE_PER_MINUTE),
                baseline == null ? null : read(baseline.beatRateSi(), Unit.PER_MINUTE),
                baseline == null ? null : read(baseline.deliveryPressureSi(), Unit.BAR));
    }

    ConfigurationDetails details() {
        return new ConfigurationDetails(
                fallM,
                liftM,
                drivePipeMaterial,
                drivePipeBoreMm,
                drivePipeLengthM,
                deliveryPipe,
                deliveryPipeBoreMm,
                deliveryPipeLengthM,
                valveSetting,
                designDriveFlowLMin,
                designDeliveredLMin,
                vesselPrechargeBar);
    }

    /** The baseline, if any of its readings is given; without a day of its own it is of the given day. */
    @Nullable
    BaselineDetails baseline(LocalDate otherwise) {
        if (driveFlow == null && deliveredFlow == null && beatRate == null && deliveryPressure == null) {
            return null;
        }
        return new BaselineDetails(
                takenOn == null ? otherwise : takenOn,
                si(driveFlow, Unit.LITRE_PER_MINUTE),
                si(deliveredFlow, Unit.LITRE_PER_MINUTE),
                si(beatRate, Unit.PER_MINUTE),
                si(deliveryPressure, Unit.BAR),
                null);
    }

    boolean sameBaseline(ConfigurationForm other) {
        return Objects.equals(takenOn, other.takenOn)
                && Objects.equals(driveFlow, other.driveFlow)
                && Objects.equals(deliveredFlow, other.deliveredFlow)
                && Objects.equals(beatRate, other.beatRate)
                && Objects.equals(deliveryPressure, other.deliveryPressure);
    }

    private static @Nullable Double si(@Nullable Double value, Unit unit) {
        return value == null ? null : unit.toSi(value);
    }

    /** What people read on the instrument, without the dust of conversion. */
    private static @Nullable Double read(@Nullable Double si, Unit unit) {
        return si == null
                ? null
                : Double.valueOf(new BigDecimal(unit.fromSi(si))
                        .round(new MathContext(6))
                        .doubleValue());
    }

    int versionOrFirst() {
        return version == null ? 0 : version;
    }
}
