package app.ramkeeper.desk;

import app.ramkeeper.shared.Unit;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The story of an install: what happened, newest first, and how its flow moved against each configuration's baseline.
 *
 * @param entries one page of what happened
 * @param next cursor of the next page
 * @param periods its configurations, oldest first
 * @param measured one row per day on which a flow was read, oldest first
 */
public record InstallHistory(
        List<Entry> entries, @Nullable String next, List<Period> periods, List<Measured> measured) {

    /**
     * Something that happened.
     *
     * @param kind REPORT, CONFIGURATION, PUMP, STATE or CALL
     * @param words what happened, one sentence a line
     */
    public record Entry(
            LocalDate on,
            String kind,
            String title,
            List<String> words,
            @Nullable UUID report) {}

    /** A configuration between two days, with the baseline it is judged by. */
    public record Period(
            @Nullable LocalDate from,
            @Nullable LocalDate until,
            @Nullable Double fallM,
            @Nullable Double liftM,
            @Nullable String reason,
            @Nullable Double baselineDrive,
            @Nullable Double baselineDelivered) {

        boolean covers(LocalDate day) {
            return (from == null || !day.isBefore(from)) && (until == null || day.isBefore(until));
        }

        /** D'Aubuisson efficiency q h / (Q H) of two flows at this fall and lift; absent where one is unknown. */
        public @Nullable Double efficiency(@Nullable Double drive, @Nullable Double delivered) {
            if (drive == null || delivered == null || fallM == null || liftM == null || drive <= 0) {
                return null;
            }
            return delivered * liftM / (drive * fallM);
        }

        public @Nullable Double baselineEfficiency() {
            return efficiency(baselineDrive, baselineDelivered);
        }
    }

    /** What was read on a day, in SI; whether it may be compared, and if not why. */
    public record Measured(
            LocalDate on,
            @Nullable Double drive,
            @Nullable Double delivered,
            @Nullable Double beat,
            @Nullable Double pressure,
            boolean comparable,
            @Nullable String reason,
            @Nullable Period period) {

        public @Nullable Double efficiency() {
            return period == null || !comparable ? null : period.efficiency(drive, delivered);
        }

        public @Nullable Double deliveredPerMinute() {
            return delivered == null ? null : Unit.LITRE_PER_MINUTE.fromSi(delivered);
        }

        /** How far the delivered flow is from the baseline, as a share: -0.1 is ten per cent less. */
        public @Nullable Double againstBaseline() {
            if (period == null || period.baselineDelivered() == null || delivered == null || !comparable) {
                return null;
            }
            return delivered / period.baselineDelivered() - 1;
        }
    }
}
