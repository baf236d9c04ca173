package app.ramkeeper.visits;

import app.ramkeeper.fleet.PumpId;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** One value in the course of an install's readings, as entered and in SI. */
public record ReadingPoint(
        ReportId report,
        LocalDate on,
        VisitKind kind,
        @Nullable PumpId pump,
        Quantity quantity,
        MeasuredAt place,
        BigDecimal value,
        String unitSymbol,
        double si,
        @Nullable String instrument,
        boolean comparable,
        @Nullable String notComparableReason) {}
