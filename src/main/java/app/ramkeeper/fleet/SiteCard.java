package app.ramkeeper.fleet;

import app.ramkeeper.identity.DepotId;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A site as a technician may see it: no private notes, no prices; parties are those of today. */
public record SiteCard(
        SiteId id,
        @Nullable String reference,
        String name,
        @Nullable String locality,
        @Nullable DepotId depot,
        @Nullable String depotName,
        @Nullable Position depotPosition,
        @Nullable CatchmentId catchment,
        @Nullable String catchmentName,
        Biosecurity biosecurity,
        @Nullable Position position,
        @Nullable Double altitudeM,
        @Nullable String wayIn,
        @Nullable String gate,
        @Nullable Integer walkMinutes,
        @Nullable SourceKind sourceKind,
        @Nullable String waterClass,
        @Nullable String waterClassName,
        boolean drinkingWater,
        List<Hazard> hazards,
        List<AccessWindow> windows,
        List<ClosedPeriod> closedPeriods,
        List<PartyCard> parties) {

    /** The period that closes the site on a day, if one does. */
    public @Nullable ClosedPeriod closedOn(LocalDate day) {
        return closedPeriods.stream().filter(p -> p.covers(day)).findFirst().orElse(null);
    }

    /** True if nobody may be sent here alone. */
    public boolean needsTwo() {
        return hazards.stream().anyMatch(hazard -> hazard.kind().needsTwo());
    }
}
