package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import org.junit.jupiter.api.Test;

class ValveSweepTests {

    @Test
    void findsAnOptimumOfItsOwnWhereWaterIsPlenty() {
        ValveSweep sweep = sweep(1000);

        ValveSetting best = sweep.best().orElseThrow();
        assertThat(best.drowned()).isTrue();
        assertThat(best.setting()).isBetween(0.0055, 0.0075);
        assertThat(sweep.settings())
                .allSatisfy(s -> assertThat(s.cycle().deliveredFlow())
                        .isLessThanOrEqualTo(best.cycle().deliveredFlow()));
        assertThat(near(best, 0.98).deliveredFlow()).isLessThan(best.cycle().deliveredFlow());
        assertThat(near(best, 1.02).deliveredFlow()).isLessThan(best.cycle().deliveredFlow());
        assertThat(sweep.notes()).isEmpty();
    }

    @Test
    void stopsAtTheDryFlowAndSaysWhatComesBeyond() {
        ValveSweep sweep = sweep(80);

        ValveSetting best = sweep.best().orElseThrow();
        assertThat(best.cycle().driveFlow().litresPerMinute()).isCloseTo(80, within(0.05));
        assertThat(best.sustained()).isTrue();
        assertThat(sweep.settings()).extracting(ValveSetting::drowned).contains(true, false);
        assertThat(sweep.notes()).extracting(Note::code).containsExactly(Note.Code.CAUTION);
    }

    @Test
    void takesNoLessWhenTheLevelFalls() {
        CycleSetup setup = Setups.hill().withSetting(0.005);
        Flow full = RigidCycle.run(setup).driveFlow();

        for (double fall = 3.9; fall > 2; fall -= 0.1) {
            assertThat(RigidCycle.run(setup.withFall(new Head(fall))).driveFlow())
                    .isGreaterThan(full.times(0.97));
        }
    }

    @Test
    void saysWhenNoSettingDoes() {
        ValveSweep sweep = sweep(10);

        assertThat(sweep.best()).isEmpty();
        assertThat(sweep.notes()).extracting(Note::code).contains(Note.Code.OUTSIDE_RANGE, Note.Code.CAUTION);
    }

    @Test
    void refusesRangesThatAreNone() {
        Flow water = Flow.NONE;
        assertThatThrownBy(() -> ValveSweep.over(Setups.hill(), 0.005, 0.005, 9, water))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessageContaining("greatest setting is 0.005");
        assertThatThrownBy(() -> ValveSweep.over(Setups.hill(), 0.005, 0.007, 2, water))
                .hasMessageContaining("number of settings is 2");
        assertThatThrownBy(() -> ValveSweep.over(Setups.hill(), 0, 0.007, 9, water))
                .hasMessageContaining("least setting");
    }

    private static ValveSweep sweep(double dryLitresPerMinute) {
        return ValveSweep.over(Setups.hill(), 0.002, 0.009, 15, Flow.ofLitresPerMinute(dryLitresPerMinute));
    }

    private static Cycle near(ValveSetting best, double factor) {
        return RigidCycle.run(Setups.hill().withSetting(best.setting() * factor));
    }
}
