package app.ramkeeper.fleet;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An install as it stands today.
 *
 * @param state absent: not commissioned yet
 * @param configuration the one in force, with its baseline
 */
public record InstallCard(
        InstallId id,
        SiteId site,
        String siteName,
        @Nullable String reference,
        String name,
        @Nullable LocalDate commissionedOn,
        boolean commissioningKnown,
        @Nullable LocalDate retiredOn,
        @Nullable LocalDate warrantyUntil,
        @Nullable String waterClass,
        boolean drinkingWater,
        @Nullable RunningState state,
        @Nullable LocalDate stateSince,
        @Nullable String stateReason,
        @Nullable ConfigurationCard configuration,
        List<FittedPump> pumps) {}
