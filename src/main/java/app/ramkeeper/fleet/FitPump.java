package app.ramkeeper.fleet;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Fits a pump; what stood at that place goes elsewhere on the same day.
 *
 * @param placeNo place in the battery, 1 for a single pump
 * @param loan true for a pump that is lent
 * @param oldGoesTo where the pump that stood there goes: WORKSHOP, STORE or RETIRED
 */
public record FitPump(
        PumpId pump,
        InstallId install,
        int placeNo,
        LocalDate on,
        boolean loan,
        PumpPlace oldGoesTo,
        @Nullable String reason) {}
