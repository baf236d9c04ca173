package app.ramkeeper.fleet;

import app.ramkeeper.catalogue.PumpModelId;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** What the register knows about a pump itself. */
@Embeddable
public record PumpDetails(
        @Nullable String serial,
        @Column(name = "model_id") @Nullable PumpModelId model,
        @Nullable LocalDate madeOn,
        @Enumerated(EnumType.STRING) Ownership ownership,
        @Nullable LocalDate warrantyUntil,
        @Nullable String notes) {

    /** A customer's pump of which serial and model are known. */
    public static PumpDetails of(@Nullable String serial, @Nullable PumpModelId model) {
        return new PumpDetails(serial, model, null, Ownership.CUSTOMER, null, null);
    }
}
