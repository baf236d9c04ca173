package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.ram.CatalogueTable.Entry;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What phones take along to judge by. */
class ExpectedTableTests {

    /** A maker's table with the corner missing that no one would build: much fall, little lift. */
    private static List<Entry> maker() {
        List<Entry> entries = new ArrayList<>();
        for (double fall : new double[] {2, 4, 8}) {
            for (double lift : new double[] {12, 30, 60}) {
                for (double drive : new double[] {30, 60, 90}) {
                    if (lift >= 3 * fall) {
                        entries.add(new Entry(fall, lift, drive, 0.6 * drive * fall / lift));
                    }
                }
            }
        }
        return entries;
    }

    private static ExpectedTable.Setup setup(double fall, double lift, List<Entry> model) {
        return new ExpectedTable.Setup(fall, lift, 60, null, null, null, model);
    }

    @Test
    void makersTableWithGapsIsUsedWhereItIsStated() {
        List<ExpectedTable.Row> rows = ExpectedTable.of(setup(4, 30, maker()));
        // shares 0.5 to 1.4 of 60 l/min lie within 30 to 90
        assertThat(rows).hasSize(6);
        // 60 % of the water's energy: 60 x 4 / 30 x 0.6
        assertThat(rows.get(3).delivered() * 60_000).isCloseTo(4.8, within(0.01));
        assertThat(rows.get(3).u()).isPositive();
    }

    @Test
    void besideAGapNothingIsExpected() {
        assertThat(ExpectedTable.of(setup(6, 20, maker()))).isEmpty();
    }

    @Test
    void modelWithoutTableIsJudgedByThePocketBook() {
        assertThat(ExpectedTable.of(setup(4, 30, List.of()))).hasSize(8);
    }
}
