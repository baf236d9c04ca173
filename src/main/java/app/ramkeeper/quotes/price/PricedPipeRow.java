package app.ramkeeper.quotes.price;

import app.ramkeeper.sizing.design.PricedPipe;
import app.ramkeeper.sizing.pipe.PipeMaterial;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A pipe with its price per metre on one day.
 *
 * @param soldInM stock length or coil; null where any length is sold
 */
public record PricedPipeRow(
        UUID id,
        String code,
        String name,
        PipeUse pipeUse,
        PipeMaterial material,
        String series,
        double outsideMm,
        double wallMm,
        double classBar,
        @Nullable BigDecimal soldInM,
        boolean drinkingWaterFit,
        BigDecimal price,
        @Nullable BigDecimal cost) {

    public double boreMm() {
        return outsideMm - 2 * wallMm;
    }

    /** The same as the search for designs takes it. */
    public PricedPipe forSearch() {
        PipeType type = new PipeType(
                name,
                material,
                series,
                (int) Math.round(outsideMm),
                Length.ofMillimetres(outsideMm),
                Length.ofMillimetres(wallMm),
                Pressure.ofBar(classBar));
        return new PricedPipe(type, price.doubleValue());
    }
}
