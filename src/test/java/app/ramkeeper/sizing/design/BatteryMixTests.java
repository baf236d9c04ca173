package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.water.Ambient;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A small pump of 10 to 25 l/min between two large ones of 50 to 100. */
class BatteryMixTests {

    private final PumpUnit small = Examples.unit(10, 25);
    private final PumpUnit large = Examples.unit(50, 100);

    @ParameterizedTest(name = "{0} l/min: {1} run")
    @CsvSource({"9, 0", "10, 1", "40, 1", "60, 2", "75, 2", "99, 2", "130, 3", "160, 3", "230, 3"})
    void runsAsManyAsDeliverMost(double source, int most) {
        Battery battery = battery(40);
        BatteryDuty best = battery.best(lMin(source));

        double byHand = 0;
        for (List<Integer> choice : List.of(
                List.of(0), List.of(1), List.of(2), List.of(0, 1), List.of(0, 2), List.of(1, 2), List.of(0, 1, 2))) {
            byHand = Math.max(
                    byHand, battery.duty(lMin(source), choice).delivered().litresPerMinute());
        }
        assertThat(best.delivered().litresPerMinute()).isCloseTo(byHand, within(2e-6 * byHand + 1e-12));
        assertThat(best.running()).isLessThanOrEqualTo(most);
        assertThat(best.running() == 0).isEqualTo(most == 0);
    }

    @Test
    void runsTheSmallPumpAloneOnLittleWater() {
        BatteryDuty best = battery(40).best(lMin(24));

        assertThat(best.pumps()).singleElement().satisfies(pump -> {
            assertThat(pump.index()).isEqualTo(1);
            assertThat(pump.drive().litresPerMinute()).isCloseTo(24, within(1e-9));
        });
    }

    @Test
    void sharesWaterEquallyFarBetweenLeastAndMost() {
        BatteryDuty duty = battery(40).duty(lMin(120), List.of(0, 1));

        // 60 at least, 125 at most: 120 is 60/65 of the way up
        assertThat(duty.pumps().get(0).drive().litresPerMinute()).isCloseTo(50 + 50 * 60 / 65.0, within(1e-9));
        assertThat(duty.pumps().get(1).drive().litresPerMinute()).isCloseTo(10 + 15 * 60 / 65.0, within(1e-9));
    }

    @Test
    void forecastsWithTheGreediestPumpsStopped() {
        Battery battery = battery(40);

        assertThat(forecast(battery, 230)).isCloseTo(duty(battery, 230, 0, 1, 2), within(1e-6));
        // 110 l/min are the least for all three
        assertThat(forecast(battery, 109)).isCloseTo(duty(battery, 109, 1, 2), within(1e-6));
        assertThat(forecast(battery, 59)).isCloseTo(duty(battery, 59, 1), within(1e-6));
        assertThat(forecast(battery, 9)).isZero();
        assertThat(battery.forecastM3s(5, 5, 0.01)).isZero();
        assertThat(battery.forecastM3s(5, 4, 0.01)).isZero();
    }

    @Test
    void deliversNothingOutsideAPumpsRange() {
        // the pumps lift 100 m at most and want 1.5 m of fall
        assertThat(duty(battery(100.5), 100, 0, 1)).isZero();
        BatteryDuty high = battery(100.5).duty(lMin(100), List.of(0, 1));
        assertThat(high.notes()).anyMatch(note -> note.sentence().startsWith("Pump 2, Two inch, delivers nothing"));
        Battery flat =
                new Battery(List.of(large), new Head(1.4), new Head(10), q -> 0, Optional.empty(), Ambient.standard());
        assertThat(duty(flat, 80, 0)).isZero();
        // more fall than the 12 m they take counts as 12
        Battery steep =
                new Battery(List.of(large), new Head(20), new Head(60), q -> 0, Optional.empty(), Ambient.standard());
        Battery most =
                new Battery(List.of(large), new Head(12.5), new Head(60), q -> 0, Optional.empty(), Ambient.standard());
        assertThat(duty(steep, 80, 0)).isPositive().isEqualTo(duty(most, 80, 0));
        assertThat(steep.duty(lMin(80), List.of(0)).notes())
                .anyMatch(note -> note.sentence().contains("fall"));
    }

    private double forecast(Battery battery, double source) {
        return battery.forecastM3s(5, 40, source / 60e3) * 60e3;
    }

    private static double duty(Battery battery, double source, int... running) {
        List<Integer> on = new ArrayList<>();
        for (int index : running) {
            on.add(index);
        }
        return battery.duty(lMin(source), on).delivered().litresPerMinute();
    }

    private Battery battery(double lift) {
        return new Battery(
                List.of(large, small, large),
                new Head(5),
                new Head(lift),
                q -> 3e8 * q * q,
                Optional.empty(),
                Ambient.standard());
    }

    private static Flow lMin(double value) {
        return Flow.ofLitresPerMinute(value);
    }
}
