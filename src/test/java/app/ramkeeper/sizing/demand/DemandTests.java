package app.ramkeeper.sizing.demand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Note;
import java.util.List;
import org.junit.jupiter.api.Test;

class DemandTests {

    private final DemandTable table = DemandTable.standard();

    @Test
    void addsUpPeopleStockAndLand() {
        Demand demand = new Demand(
                List.of(
                        new Demand.Heads(table.find("person", "household").orElseThrow(), 4),
                        new Demand.Heads(table.find("sheep", "usual").orElseThrow(), 300)),
                List.of(new Irrigation(100, 4, 0.8)));

        // 4 x 200 + 300 x 4 + 100 x 4 / 0.8
        assertThat(demand.daily().litresPerDay()).isCloseTo(2500, within(1e-6));
        assertThat(Demand.of(demand.heads().get(1)).daily().litresPerDay()).isCloseTo(1200, within(1e-6));
        assertThat(new Irrigation(0, 4, 1).litresPerDay()).isZero();
        assertThat(demand.peakHour(DayPattern.of(6, 4)).litresPerDay()).isCloseTo(15_000, within(1e-6));
        assertThat(demand.storageForDays(3).litres()).isCloseTo(7500, within(1e-6));
        assertThatThrownBy(() -> demand.storageForDays(-1)).hasMessageContaining("days of storage");
    }

    @Test
    void putsAnOfficesOwnRateInPlace() {
        DemandTable own = table.with(new DemandRate("sheep", "usual", 5, "office"))
                .with(new DemandRate("goat", "usual", 8, "office"));

        assertThat(own.find("sheep", "usual").orElseThrow().litresPerDay()).isEqualTo(5);
        assertThat(own.find("goat", "usual").orElseThrow().litresPerDay()).isEqualTo(8);
        assertThat(own.find("sheep", "hot weather").orElseThrow().litresPerDay())
                .isEqualTo(14);
        assertThat(own.rates()).hasSize(table.rates().size() + 1);
        assertThat(table.find("goat", "usual")).isEmpty();
    }

    @Test
    void refusesWhatCannotBe() {
        DemandRate rate = new DemandRate("goat", "usual", 8, "office");

        assertThatThrownBy(() -> new DemandTable(List.of(rate, rate))).hasMessageContaining("two rates");
        assertThatThrownBy(() -> new Irrigation(-1, 4, 0.8)).hasMessageContaining("irrigated area");
        assertThatThrownBy(() -> new Irrigation(1, 21, 0.8)).hasMessageContaining("crop need");
        assertThatThrownBy(() -> new Irrigation(1, 4, 0)).hasMessageContaining("share applied");
        assertThatThrownBy(() -> new Demand.Heads(rate, -1)).hasMessageContaining("number of goat");
    }

    @Test
    void spreadsTheDayOverItsHours() {
        assertThat(DayPattern.even().busiest()).isCloseTo(1 / 24.0, within(1e-12));
        assertThat(DayPattern.of(6, 4).busiest()).isEqualTo(0.25);
        assertThat(DayPattern.of(22, 4).shares()).satisfies(shares -> {
            assertThat(shares.get(23)).isEqualTo(0.25);
            assertThat(shares.get(1)).isEqualTo(0.25);
            assertThat(shares.get(2)).isZero();
        });
        assertThatThrownBy(() -> DayPattern.of(0, 0)).hasMessageContaining("hours of use");
    }

    @Test
    void storesOverTheNightAndSaysWhenNoTankHelps() {
        Flow use = Flow.ofLitresPerDay(2400);

        assertThat(DayPattern.even().storage(use, use).value().litres()).isCloseTo(0, within(1e-6));
        // used from 22 to 2 o'clock: 600 l an hour less the 100 that come
        assertThat(DayPattern.of(22, 4).storage(use, use).value().litres()).isCloseTo(2000, within(1e-6));
        assertThat(DayPattern.even().storage(use, Flow.ofLitresPerDay(2000)).has(Note.Code.CAUTION))
                .isTrue();
        assertThat(DayPattern.even().storage(use, use).notes()).isEmpty();
    }
}
