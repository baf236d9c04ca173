package app.ramkeeper.desk;

import app.ramkeeper.fleet.BaselineDetails;
import app.ramkeeper.fleet.ConfigurationCard;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.ReadingPoint;
import app.ramkeeper.visits.SiteNow.LastReading;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The last reading of each quantity beside the baseline of the configuration in force. */
final class ReadingsAgainstBaseline {

    private ReadingsAgainstBaseline() {}

    /**
     * A reading and what it is judged by.
     *
     * @param baseline in SI; absent where none was taken, or it was taken in an older configuration
     */
    public record Judged(ReadingPoint reading, @Nullable Double baseline) {

        /** The change against the baseline as a share; absent where they cannot be compared. */
        public @Nullable Double change() {
            return baseline == null || !reading.comparable() || baseline == 0 ? null : reading.si() / baseline - 1;
        }
    }

    static Map<InstallId, List<Judged>> of(List<InstallCard> installs, List<LastReading> readings) {
        Map<InstallId, InstallCard> cards = installs.stream().collect(Collectors.toMap(InstallCard::id, card -> card));
        return readings.stream()
                .filter(last -> cards.containsKey(last.install()))
                .collect(Collectors.groupingBy(
                        LastReading::install,
                        Collectors.mapping(last -> judged(last, cards.get(last.install())), Collectors.toList())));
    }

    private static Judged judged(LastReading last, @Nullable InstallCard install) {
        ConfigurationCard configuration = install == null ? null : install.configuration();
        BaselineDetails baseline = configuration == null ? null : configuration.baseline();
        boolean sameSetUp =
                configuration != null && configuration.inForceOn(last.reading().on());
        return new Judged(
                last.reading(),
                baseline == null || !sameSetUp
                        ? null
                        : value(baseline, last.reading().quantity()));
    }

    private static @Nullable Double value(BaselineDetails baseline, Quantity quantity) {
        return switch (quantity) {
            case DRIVE_FLOW -> baseline.driveFlowSi();
            case DELIVERED_FLOW -> baseline.deliveredFlowSi();
            case BEAT_RATE -> baseline.beatRateSi();
            case DELIVERY_PRESSURE -> baseline.deliveryPressureSi();
            default -> null;
        };
    }
}
