package app.ramkeeper.quotes.price;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A pump model with its performance table and its price on one day; what the catalogue does not know is null.
 *
 * @param price fitted with nothing: the fittings kit has its own
 * @param performance rising by fall, lift, drive flow
 */
public record PricedModel(
        UUID modelId,
        String name,
        @Nullable Double driveBoreMm,
        @Nullable Double fallMinM,
        @Nullable Double fallMaxM,
        @Nullable Double liftMaxM,
        @Nullable Double driveFlowMinLMin,
        @Nullable Double driveFlowMaxLMin,
        @Nullable Double maxPressureBar,
        @Nullable Double massKg,
        String vesselKind,
        BigDecimal price,
        List<Point> performance) {

    /** One measured point, or one of the maker's table. */
    public record Point(double fallM, double liftM, double driveFlowLMin, double deliveredLMin) {}

    /** Whether a design can be reckoned with it: every limit known, and some performance. */
    public boolean isWhole() {
        return driveBoreMm != null
                && fallMinM != null
                && fallMaxM != null
                && liftMaxM != null
                && driveFlowMinLMin != null
                && driveFlowMaxLMin != null
                && maxPressureBar != null
                && !performance.isEmpty();
    }
}
