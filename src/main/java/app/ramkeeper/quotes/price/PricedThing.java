package app.ramkeeper.quotes.price;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A thing with its price on one day.
 *
 * @param price without tax for one unit; of TAX the rate in per cent
 * @param cost what it costs the company; null where nobody said
 * @param litres of a vessel or tank
 */
public record PricedThing(
        UUID id,
        String code,
        PriceKind kind,
        String name,
        String unit,
        @Nullable UUID modelId,
        @Nullable BigDecimal litres,
        @Nullable BigDecimal ratingBar,
        boolean drinkingWaterFit,
        BigDecimal price,
        @Nullable BigDecimal cost) {}
