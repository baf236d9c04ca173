package app.ramkeeper.sizing.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.ram.LineLoss;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BatteryTests {

    private static final LineLoss LINE = q -> 3e8 * q * q;

    @Test
    void fewerShouldRunAsTheSourceFalls() {
        List<BatteryDuty> duties =
                battery(Optional.empty()).asTheSourceFalls(List.of(lMin(200), lMin(120), lMin(70), lMin(40), lMin(20)));

        assertThat(duties).extracting(BatteryDuty::running).isSortedAccordingTo((a, b) -> b - a);
        assertThat(duties.get(0).running()).isEqualTo(3);
        assertThat(duties.get(3).running()).isEqualTo(1);
        assertThat(duties.get(4).running()).isZero();
        assertThat(duties).extracting(BatteryDuty::delivered).isSortedAccordingTo((a, b) -> b.compareTo(a));
    }

    @Test
    void sharesOneHeadAndAddsUp() {
        BatteryDuty duty = battery(Optional.empty()).duty(lMin(120), List.of(0, 1, 2));

        double sum = duty.pumps().stream()
                .mapToDouble(pump -> pump.delivered().litresPerMinute())
                .sum();
        double delivered = duty.delivered().cubicMetresPerSecond();
        assertThat(sum).isCloseTo(duty.delivered().litresPerMinute(), within(1e-5));
        assertThat(duty.head().metres()).isCloseTo(40 + LINE.metres(delivered), within(1e-9));
        assertThat(duty.pumps()).allSatisfy(pump -> {
            assertThat(pump.drive().litresPerMinute()).isCloseTo(40, within(1e-9));
            assertThat(pump.netFall().metres()).isBetween(4.5, 5.);
        });
        assertThat(duty.spilled().litresPerMinute()).isCloseTo(0, within(1e-6));
    }

    @Test
    void eachPumpGivesLessBesideOthersThanAlone() {
        Battery battery = battery(Optional.empty());

        BatteryDuty alone = battery.duty(lMin(40), List.of(1));
        BatteryDuty three = battery.duty(lMin(120), List.of(0, 1, 2));

        assertThat(three.delivered()).isLessThan(alone.delivered().times(3));
        assertThat(three.delivered()).isGreaterThan(alone.delivered());
    }

    @Test
    void spillsWhatTheFeedPipeDoesNotBring() {
        Feed feed = new Feed(new PipeRun(new Length(0.05), new Length(60), new Length(1e-5), 1), new Head(0.5));
        Battery battery = battery(Optional.of(feed));
        double capacity = feed.capacity(Ambient.standard()).litresPerMinute();

        BatteryDuty duty = battery.best(lMin(200));

        assertThat(capacity).isBetween(40., 130.);
        assertThat(battery.reaching(lMin(200)).litresPerMinute()).isCloseTo(capacity, within(1e-9));
        assertThat(battery.reaching(lMin(10)).litresPerMinute()).isCloseTo(10, within(1e-9));
        assertThat(duty.spilled().litresPerMinute()).isCloseTo(200 - capacity, within(1e-6));
        assertThat(duty.feedLoss().metres()).isCloseTo(0.5, within(1e-6));
        assertThat(duty.notes()).extracting(Note::sentence).anyMatch(text -> text.contains("feed pipe"));
    }

    @Test
    void saysWhenThereIsNotEnoughForAll() {
        BatteryDuty duty = battery(Optional.empty()).duty(lMin(60), List.of(0, 1, 2));

        assertThat(duty.delivered()).isEqualTo(Flow.NONE);
        assertThat(duty.notes()).extracting(Note::sentence).anyMatch(text -> text.contains("fewer should run"));
    }

    @Test
    void saysWhyNoneShouldRun() {
        assertThat(battery(Optional.empty()).best(lMin(20)).notes())
                .extracting(Note::sentence)
                .containsExactly("The source does not give this pump its least drive flow.");
        // 1.55 m of fall, of which the drive pipe takes enough to pass the lowest fall of 1.5 m
        Battery low = new Battery(
                List.of(Examples.unit(25, 60)),
                new Head(1.55),
                new Head(10),
                LINE,
                Optional.empty(),
                Ambient.standard());
        BatteryDuty none = low.best(lMin(60));
        assertThat(none.running()).isZero();
        assertThat(none.notes())
                .extracting(Note::sentence)
                .anyMatch(text -> text.startsWith("Pump 1, Two inch, delivers nothing at 1.395 m of net fall"));
    }

    @Test
    void refusesPumpsThatAreNotThere() {
        assertThatThrownBy(() -> battery(Optional.empty()).duty(lMin(60), List.of(3)))
                .hasMessageContaining("index of a pump is 3");
        assertThatThrownBy(() ->
                        new Battery(List.of(), new Head(5), new Head(40), LINE, Optional.empty(), Ambient.standard()))
                .hasMessageContaining("number of pumps is 0");
        assertThatThrownBy(() -> new Battery(
                        List.of(Examples.unit(25, 60)),
                        new Head(5),
                        new Head(5),
                        LINE,
                        Optional.empty(),
                        Ambient.standard()))
                .hasMessageContaining("lift is 5.0 m");
    }

    static Battery battery(Optional<Feed> feed) {
        PumpUnit unit = Examples.unit(25, 60);
        return new Battery(List.of(unit, unit, unit), new Head(5), new Head(40), LINE, feed, Ambient.standard());
    }

    private static Flow lMin(double value) {
        return Flow.ofLitresPerMinute(value);
    }
}
