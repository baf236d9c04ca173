package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.CatchmentId;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.SiteDetails;
import app.ramkeeper.fleet.SourceKind;
import app.ramkeeper.identity.DepotId;
import app.ramkeeper.shared.Uuids;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A site as its form shows it.
 *
 * @param position as it was typed
 * @param positionAsTyped the person was asked about a doubtful position and keeps it
 * @param customer the owner, for a site that is registered from a customer's page
 */
record SiteForm(
        @Nullable UUID id,
        @Nullable Integer version,
        @Size(max = 60) @Nullable String reference,
        @NotBlank @Size(max = 200) @Nullable String name,
        @Size(max = 200) @Nullable String locality,
        @Nullable UUID catchment,
        @Nullable UUID depot,
        @Size(max = 80) @Nullable String position,
        @Nullable Boolean positionAsTyped,
        @DecimalMin("-430") @DecimalMax("5500") @Nullable Double altitudeM,
        @Size(max = 4000) @Nullable String wayIn,
        @Size(max = 1000) @Nullable String gate,
        @Min(0) @Max(600) @Nullable Integer walkMinutes,
        @Nullable SourceKind sourceKind,
        @Size(max = 20) @Nullable String waterClass,
        @Nullable Boolean drinkingWater,
        @Size(max = 10000) @Nullable String privateNotes,
        @Nullable UUID customer) {

    static SiteForm blank(@Nullable UUID customer) {
        return new SiteForm(
                Uuids.next(),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                customer);
    }

    static SiteForm of(SiteDetails details, int version) {
        CatchmentId catchment = details.catchment();
        DepotId depot = details.depot();
        Position position = details.position();
        return new SiteForm(
                null,
                version,
                details.reference(),
                details.name(),
                details.locality(),
                catchment == null ? null : catchment.value(),
                depot == null ? null : depot.value(),
                position == null ? null : position.toString(),
                null,
                details.altitudeM(),
                details.wayIn(),
                details.gate(),
                details.walkMinutes(),
                details.sourceKind(),
                details.waterClass(),
                details.drinkingWater(),
                details.privateNotes(),
                null);
    }

    SiteDetails details(@Nullable Position read) {
        return new SiteDetails(
                reference,
                String.valueOf(name),
                locality,
                catchment == null ? null : new CatchmentId(catchment),
                depot == null ? null : new DepotId(depot),
                read,
                altitudeM,
                wayIn,
                gate,
                walkMinutes,
                sourceKind,
                waterClass,
                Boolean.TRUE.equals(drinkingWater),
                privateNotes);
    }

    UUID idOrNew() {
        return id == null ? Uuids.next() : id;
    }

    int versionOrFirst() {
        return version == null ? 0 : version;
    }
}
