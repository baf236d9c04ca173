package app.ramkeeper.identity.people;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** What the page about a depot posts. */
record DepotForm(
        @NotNull @Size(max = 100) String name,
        @Nullable @Size(max = 500) String address,
        @Nullable @DecimalMin("-90") @DecimalMax("90") Double latitude,
        @Nullable @DecimalMin("-180") @DecimalMax("180") Double longitude,
        @Nullable @DecimalMin("-430") @DecimalMax("5500") Double altitudeM,
        @Nullable Integer version) {

    static DepotForm blank() {
        return new DepotForm("", null, null, null, null, null);
    }

    @AssertTrue(message = "{identity.depot.position}")
    boolean isPositionWhole() {
        return (latitude == null) == (longitude == null);
    }
}
