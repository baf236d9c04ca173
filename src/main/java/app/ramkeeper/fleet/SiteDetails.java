package app.ramkeeper.fleet;

import app.ramkeeper.identity.DepotId;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What the register knows about a site itself.
 *
 * @param reference the office's own number
 * @param walkMinutes on foot from where the vehicle stays
 * @param waterClass code of a water class of the catalogue
 * @param privateNotes for the office only
 */
@Embeddable
public record SiteDetails(
        @Nullable String reference,
        String name,
        @Nullable String locality,
        @Column(name = "catchment_id") @Nullable CatchmentId catchment,
        @Column(name = "depot_id") @Nullable DepotId depot,
        @Embedded @Nullable Position position,
        @Column(name = "altitude_m") @Nullable Double altitudeM,
        @Nullable String wayIn,
        @Nullable String gate,
        @Nullable Integer walkMinutes,
        @Enumerated(EnumType.STRING) @Nullable SourceKind sourceKind,
        @Nullable String waterClass,
        boolean drinkingWater,
        @Nullable String privateNotes) {

    /** A site of which only name and place are known. */
    public static SiteDetails named(String name, @Nullable Position position) {
        return new SiteDetails(null, name, null, null, null, position, null, null, null, null, null, null, false, null);
    }

    /** Whether what runs here asks for the same upkeep. */
    boolean sameWater(SiteDetails other) {
        return drinkingWater == other.drinkingWater && Objects.equals(waterClass, other.waterClass);
    }

    SiteDetails withPrivateNotes(@Nullable String notes) {
        return new SiteDetails(
                reference,
                name,
                locality,
                catchment,
                depot,
                position,
                altitudeM,
                wayIn,
                gate,
                walkMinutes,
                sourceKind,
                waterClass,
                drinkingWater,
                notes);
    }

    /** The same place under another name: what a split-off part starts with. */
    SiteDetails forPartOf(String newName) {
        return new SiteDetails(
                null,
                newName,
                locality,
                catchment,
                depot,
                position,
                altitudeM,
                wayIn,
                gate,
                walkMinutes,
                sourceKind,
                waterClass,
                drinkingWater,
                null);
    }
}
