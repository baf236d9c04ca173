package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class BatteryPropertyTests {

    private static final double SLACK = 1e-6;

    @Property(tries = 200)
    void neverLiftsMoreEnergyThanTheFallGives(
            @ForAll @DoubleRange(min = 2, max = 11) double fall,
            @ForAll @DoubleRange(min = 15, max = 90) double lift,
            @ForAll @DoubleRange(min = 0, max = 250) double source) {
        BatteryDuty duty = battery(fall, lift).best(Flow.ofLitresPerMinute(source));

        double drawn = duty.pumps().stream()
                .mapToDouble(pump -> pump.drive().litresPerMinute())
                .sum();
        assertThat(duty.delivered().litresPerMinute() * duty.head().metres()).isLessThanOrEqualTo(drawn * fall + SLACK);
        assertThat(drawn).isLessThanOrEqualTo(source + SLACK);
    }

    @Property(tries = 200)
    void moreSourceNeverDeliversLess(
            @ForAll @DoubleRange(min = 0, max = 250) double source,
            @ForAll @DoubleRange(min = 0, max = 50) double more) {
        Battery battery = battery(5, 40);

        double little = best(battery, source);

        assertThat(best(battery, source + more)).isGreaterThanOrEqualTo(little * (1 - 2e-6) - SLACK);
    }

    @Property(tries = 200)
    void moreLiftNeverDeliversMore(
            @ForAll @DoubleRange(min = 15, max = 80) double lift,
            @ForAll @DoubleRange(min = 0, max = 15) double more,
            @ForAll @DoubleRange(min = 30, max = 250) double source) {
        double low = best(battery(5, lift), source);

        assertThat(best(battery(5, lift + more), source)).isLessThanOrEqualTo(low * (1 + 2e-6) + SLACK);
    }

    private static double best(Battery battery, double source) {
        return battery.best(Flow.ofLitresPerMinute(source)).delivered().litresPerMinute();
    }

    private static Battery battery(double fall, double lift) {
        LineLoss line = q -> 3e8 * q * q;
        PumpUnit unit = Examples.unit(25, 60);
        return new Battery(
                List.of(unit, unit, Examples.unit(15, 40)),
                new Head(fall),
                new Head(lift),
                line,
                Optional.empty(),
                Ambient.standard());
    }
}
