package app.ramkeeper.fleet;

import app.ramkeeper.catalogue.PartId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A component is fitted.
 *
 * @param pump the pump it sits in, for an install with several
 * @param part of the catalogue, if it is one
 * @param fittedOn absent when unknown
 * @param replaces true: what sat at the position (of that pump) is out from that day on
 */
public record NewComponent(
        InstallId install,
        @Nullable PumpId pump,
        ComponentPosition position,
        @Nullable PartId part,
        @Nullable LocalDate fittedOn,
        @Nullable String batch,
        @Nullable String serial,
        @Nullable Double ratingBar,
        @Nullable String note,
        boolean replaces) {}
