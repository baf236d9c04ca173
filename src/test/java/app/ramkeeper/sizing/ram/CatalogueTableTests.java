package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.ram.CatalogueTable.Entry;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Worked by hand: falls of 2 and 4 m, lifts of 20 and 30 m, drive flows of 40 and 60 l/min, nothing stated for 4 m and 20 m. */
class CatalogueTableTests {

    private static final double L_MIN = 1 / 60_000.;

    private final CatalogueTable table = new CatalogueTable(entries());

    private static List<Entry> entries() {
        List<Entry> entries = new ArrayList<>();
        entries.add(new Entry(4, 30, 60, 4.5));
        entries.add(new Entry(4, 30, 40, 3));
        entries.add(new Entry(2, 20, 40, 2));
        entries.add(new Entry(2, 20, 60, 3));
        entries.add(new Entry(2, 30, 40, 1.2));
        entries.add(new Entry(2, 30, 60, 1.8));
        return entries;
    }

    @Test
    void whatIsNotStatedIsNeverTooMuch() {
        PerformanceTable filled = table.filled();
        assertThat(filled.deliveredM3s(4, 20, 60 * L_MIN)).isCloseTo(4.5 * L_MIN, within(1e-12));
        assertThat(filled.deliveredM3s(4, 20, 40 * L_MIN)).isCloseTo(3 * L_MIN, within(1e-12));
        assertThat(filled.deliveredM3s(2, 20, 50 * L_MIN)).isCloseTo(2.5 * L_MIN, within(1e-12));
    }

    @Test
    void onlyBetweenStatedEntriesItJudges() {
        assertThat(table.states(2, 25, 50)).isTrue();
        assertThat(table.states(3, 30, 50)).isTrue();
        assertThat(table.states(4, 30, 60)).isTrue();
        assertThat(table.states(3, 25, 50)).as("beside what is not stated").isFalse();
        assertThat(table.states(2, 25, 61)).as("more drive water").isFalse();
        assertThat(table.states(2, 19, 50)).as("less lift").isFalse();
        assertThat(table.states(1.9, 25, 50)).as("less fall").isFalse();
    }
}
