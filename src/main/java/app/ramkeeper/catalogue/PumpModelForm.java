package app.ramkeeper.catalogue;

import jakarta.validation.Valid;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the page of a pump model posts. */
public record PumpModelForm(
        @NotBlank(message = "{pumpModel.name.missing}") @Size(max = 100) @Nullable
        String name,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000") @Digits(integer = 4, fraction = 1) @Nullable
        BigDecimal driveBoreMm,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("200") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal fallMinM,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("200") @Digits(integer = 3, fraction = 2) @Nullable
        BigDecimal fallMaxM,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000") @Digits(integer = 4, fraction = 1) @Nullable
        BigDecimal liftMaxM,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("100000") @Digits(integer = 6, fraction = 2) @Nullable
        BigDecimal driveFlowMinLMin,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("100000") @Digits(integer = 6, fraction = 2) @Nullable
        BigDecimal driveFlowMaxLMin,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000") @Digits(integer = 4, fraction = 2) @Nullable
        BigDecimal maxPressureBar,

        @DecimalMin(value = "0", inclusive = false) @DecimalMax("10000") @Digits(integer = 5, fraction = 1) @Nullable
        BigDecimal massKg,

        @NotNull @Nullable VesselKind vesselKind,
        @Nullable Boolean snifter,
        @Min(1) @Max(99) @Nullable Integer deliveryValves,
        @Min(1) @Max(99) @Nullable Integer wasteValves,
        @Size(max = 4000) @Nullable String notes,
        @Nullable List<@Valid Performance> performance,
        @Nullable List<@Valid PartFit> parts,
        @Nullable Integer version) {

    /** One point of the performance table; a blank row is left out. */
    public record Performance(
            @DecimalMin(value = "0", inclusive = false) @DecimalMax("200") @Digits(integer = 3, fraction = 2) @Nullable
            BigDecimal fallM,

            @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000") @Digits(integer = 4, fraction = 2) @Nullable
            BigDecimal liftM,

            @DecimalMin(value = "0", inclusive = false)
            @DecimalMax("100000")
            @Digits(integer = 6, fraction = 3)
            @Nullable
            BigDecimal driveFlowLMin,

            @DecimalMin("0") @DecimalMax("100000") @Digits(integer = 6, fraction = 3) @Nullable
            BigDecimal deliveredLMin) {

        boolean isBlank() {
            return fallM == null && liftM == null && driveFlowLMin == null && deliveredLMin == null;
        }

        @AssertTrue(message = "{pumpModel.performance.row}")
        public boolean isWhole() {
            return isBlank() || (fallM != null && liftM != null && driveFlowLMin != null && deliveredLMin != null);
        }

        @AssertTrue(message = "{pumpModel.performance.lift}")
        public boolean isLifting() {
            return fallM == null || liftM == null || liftM.compareTo(fallM) > 0;
        }

        @AssertTrue(message = "{pumpModel.performance.energy}")
        public boolean isPaidFor() {
            return fallM == null
                    || liftM == null
                    || driveFlowLMin == null
                    || deliveredLMin == null
                    || deliveredLMin.multiply(liftM).compareTo(driveFlowLMin.multiply(fallM)) <= 0;
        }
    }

    /** A part that fits, where, and how many; a row without a part is left out. */
    public record PartFit(
            @Nullable UUID part,
            @Size(max = 40) @Nullable String position,

            @DecimalMin(value = "0", inclusive = false) @DecimalMax("1000") @Digits(integer = 4, fraction = 2) @Nullable
            BigDecimal quantity) {

        @AssertTrue(message = "{pumpModel.part.position}")
        public boolean isPlaced() {
            return part == null || position != null;
        }
    }

    static PumpModelForm blank() {
        return new PumpModelForm(
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                VesselKind.BLADDER,
                false,
                1,
                1,
                null,
                List.of(),
                List.of(),
                null);
    }

    @AssertTrue(message = "{pumpModel.fall.order}")
    public boolean isFallInOrder() {
        return fallMinM == null || fallMaxM == null || fallMaxM.compareTo(fallMinM) >= 0;
    }

    @AssertTrue(message = "{pumpModel.driveFlow.order}")
    public boolean isDriveFlowInOrder() {
        return driveFlowMinLMin == null
                || driveFlowMaxLMin == null
                || driveFlowMaxLMin.compareTo(driveFlowMinLMin) >= 0;
    }

    /** The form with rows to spare. */
    PumpModelForm roomy(int spare) {
        List<Performance> points = new ArrayList<>(TaskKindForms.orEmpty(performance));
        points.removeIf(Performance::isBlank);
        List<PartFit> fits = new ArrayList<>(TaskKindForms.orEmpty(parts));
        fits.removeIf(fit -> fit.part() == null);
        for (int i = 0; i < spare; i++) {
            points.add(new Performance(null, null, null, null));
            fits.add(new PartFit(null, null, null));
        }
        return with(points, fits, version);
    }

    PumpModelForm withVersion(@Nullable Integer saved) {
        return with(performance, parts, saved);
    }

    private PumpModelForm with(
            @Nullable List<Performance> points, @Nullable List<PartFit> fits, @Nullable Integer saved) {
        return new PumpModelForm(
                name,
                driveBoreMm,
                fallMinM,
                fallMaxM,
                liftMaxM,
                driveFlowMinLMin,
                driveFlowMaxLMin,
                maxPressureBar,
                massKg,
                vesselKind,
                snifter,
                deliveryValves,
                wasteValves,
                notes,
                points,
                fits,
                saved);
    }
}
