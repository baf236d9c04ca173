package app.ramkeeper.sizing.ram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import org.junit.jupiter.api.Test;

class ElasticCycleTests {

    @Test
    void agreesWithTheRigidColumnForAWeightedDisc() {
        Cycle rigid = RigidCycle.run(Setups.hill());

        Cycle elastic = ElasticCycle.run(Setups.hill());

        assertThat(elastic.delivered().litres()).isCloseTo(rigid.delivered().litres(), share(0.02, rigid.delivered()));
        assertThat(elastic.waste().litres()).isCloseTo(rigid.waste().litres(), share(0.02, rigid.waste()));
        assertThat(elastic.period()).isCloseTo(rigid.period(), within(0.08 * rigid.period()));
        assertThat(elastic.closingVelocity()).isCloseTo(rigid.closingVelocity(), within(0.04));
        assertThat(elastic.dAubuisson()).isCloseTo(rigid.dAubuisson(), within(0.02));
        assertThat(elastic.peak().metres()).isCloseTo(rigid.peak().metres(), within(0.2));
        assertThat(elastic.energy().gap()).isCloseTo(0, within(0.002));
    }

    @Test
    void springsBackByTheSqueezeOfWaterAndPipe() {
        CycleSetup setup = Setups.hill();

        Cycle elastic = ElasticCycle.run(setup, 96);

        assertThat(elastic.recoilVelocity()).isCloseTo(RigidCycle.run(setup).recoilVelocity(), within(0.01));
    }

    @Test
    void agreesRoughlyForAValveThatSnaps() {
        Cycle rigid = RigidCycle.run(Setups.snap());

        Cycle elastic = ElasticCycle.run(Setups.snap());

        assertThat(elastic.deliveredFlow().litresPerMinute())
                .isCloseTo(rigid.deliveredFlow().litresPerMinute(), within(1.));
        assertThat(elastic.period()).isCloseTo(rigid.period(), within(0.15 * rigid.period()));
        assertThat(elastic.energy().gap()).isCloseTo(0, within(0.005));
    }

    @Test
    void doesNotHangOnTheGrid() {
        Cycle coarse = ElasticCycle.run(Setups.hill(), 24);
        Cycle fine = ElasticCycle.run(Setups.hill(), 120);

        assertThat(fine.period()).isCloseTo(coarse.period(), within(0.005 * coarse.period()));
        assertThat(fine.delivered().litres()).isCloseTo(coarse.delivered().litres(), share(0.005, coarse.delivered()));
    }

    @Test
    void staysOpenWhenTheWaterNeverGetsFastEnough() {
        Cycle cycle = ElasticCycle.run(Setups.hill().withSetting(0.012));

        assertThat(cycle.outcome()).isEqualTo(Cycle.Outcome.STAYS_OPEN);
        assertThat(cycle.driveFlow().litresPerMinute())
                .isCloseTo(
                        RigidCycle.run(Setups.hill().withSetting(0.012))
                                .driveFlow()
                                .litresPerMinute(),
                        within(3.));
    }

    @Test
    void refusesAGridOfNothing() {
        assertThatThrownBy(() -> ElasticCycle.run(Setups.hill(), 3))
                .isInstanceOf(ImpossibleInput.class)
                .hasMessageContaining("reaches is 3");
    }

    private static org.assertj.core.data.Offset<Double> share(
            double share, app.ramkeeper.sizing.quantity.Volume volume) {
        return within(share * volume.litres());
    }
}
