package app.ramkeeper.visits.stock;

import app.ramkeeper.shared.Uuids;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One step in a place.
 *
 * @param move made with the empty form, so that a form sent twice counts once
 * @param to where it goes, in a move only
 */
public record StockForm(
        @NotNull @Nullable UUID move,
        @NotNull @Nullable UUID part,
        @NotNull @Nullable UUID place,
        @Nullable UUID to,

        @NotNull @DecimalMin("0") @DecimalMax("100000") @Nullable
        BigDecimal quantity,

        @Size(max = 60) @Nullable String batch,
        @Size(max = 500) @Nullable String note) {

    static StockForm blank(@Nullable UUID part, @Nullable UUID place, @Nullable String batch) {
        return new StockForm(Uuids.next(), part, place, null, null, batch, null);
    }

    String lot() {
        return batch == null ? "" : batch;
    }
}
