package app.ramkeeper.field;

import app.ramkeeper.fleet.ConfigurationCard;
import app.ramkeeper.fleet.FittedPump;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.web.Say;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What a commissioning measured, beside what the design and the quote said of the install. */
@Component
class CommissioningFacts {

    private static final double SECONDS_A_DAY = 86_400_000;

    private final Fleet fleet;
    private final JdbcClient jdbc;
    private final Say say;

    CommissioningFacts(Fleet fleet, JdbcClient jdbc, Say say) {
        this.fleet = fleet;
        this.jdbc = jdbc;
        this.say = say;
    }

    /**
     * An install as it was put to work; what was measured in SI.
     *
     * @param pump absent if nobody has named it
     */
    public record Measured(
            InstallCard install,
            @Nullable ConfigurationCard configuration,
            @Nullable String pump,
            @Nullable Promise promise,
            @Nullable Double delivered,
            @Nullable Double drive,
            @Nullable Double beat,
            @Nullable Double pressure,
            @Nullable Double preCharge) {

        /** How the delivered flow stands to the quote: under, within, over. */
        public @Nullable String verdict() {
            return promise == null || delivered == null
                    ? null
                    : delivered * SECONDS_A_DAY < promise.low()
                            ? "under"
                            : delivered * SECONDS_A_DAY > promise.high() ? "over" : "within";
        }
    }

    /** What the accepted quote says of the dry month, l/day. */
    public record Promise(double low, double high) {}

    /** A valve setting tried, its flows spelled one way; what is no number stays as it was typed. */
    public record Tried(
            @Nullable String setting,
            @Nullable String drive,
            @Nullable String delivered) {}

    List<Measured> of(ReportView report, Optional<PhoneVisit> sent) {
        return fleet.installsOf(report.site()).stream()
                .filter(i -> commissioned(report, i.id()))
                .map(i -> measured(i, report, sent.map(PhoneVisit::pump).orElse(null)))
                .toList();
    }

    List<Tried> tried(PhoneVisit sent) {
        List<PhoneVisit.Step> steps = sent.steps();
        return steps == null ? List.of() : steps.stream().map(this::tried).toList();
    }

    Tried tried(PhoneVisit.Step step) {
        return new Tried(step.setting(), spelled(step.drive()), spelled(step.delivered()));
    }

    @Nullable
    String spelled(@Nullable String typed) {
        Double value = Settings.number(typed);
        return value == null ? typed : say.number(value, 3);
    }

    /** Without the name of the one, all that were measured. */
    private static boolean commissioned(ReportView report, InstallId install) {
        ReportView.Commissioned said = report.commissioned();
        if (said != null && said.install() != null) {
            return install.equals(said.install());
        }
        return report.readings().isEmpty() || report.readings().stream().anyMatch(r -> install.equals(r.install()));
    }

    private Measured measured(InstallCard install, ReportView report, @Nullable String named) {
        return new Measured(
                install,
                fleet.configurationOn(install.id(), report.on()).orElse(null),
                install.pumps().isEmpty() ? named : names(install.pumps()),
                promise(install.id()),
                read(report, install.id(), Quantity.DELIVERED_FLOW),
                read(report, install.id(), Quantity.DRIVE_FLOW),
                read(report, install.id(), Quantity.BEAT_RATE),
                read(report, install.id(), Quantity.DELIVERY_PRESSURE),
                read(report, install.id(), Quantity.PRE_CHARGE));
    }

    private static @Nullable String names(List<FittedPump> pumps) {
        String names = pumps.stream()
                .map(p -> Stream.of(p.modelName(), p.serial())
                        .filter(word -> word != null && !word.isBlank())
                        .collect(Collectors.joining(" ")))
                .filter(name -> !name.isEmpty())
                .collect(Collectors.joining(", "));
        return names.isEmpty() ? null : names;
    }

    private @Nullable Promise promise(InstallId install) {
        return jdbc.sql("select * from (" + BundleSql.PROMISES + ") p where install = :install")
                .param("install", install.value())
                .query(Promise.class)
                .optional()
                .orElse(null);
    }

    /** What reached the tank counts before what left the pump. */
    private static @Nullable Double read(ReportView report, InstallId install, Quantity quantity) {
        return report.readings().stream()
                .filter(r -> r.install().equals(install) && r.quantity() == quantity && r.comparable())
                .min(Comparator.comparing(r -> r.place() != MeasuredAt.TANK))
                .map(ReportView.Reading::si)
                .orElse(null);
    }
}
