package app.ramkeeper.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.demand.DayPattern;
import app.ramkeeper.sizing.drive.DrivePipe;
import app.ramkeeper.sizing.drive.DriveWall;
import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.pipe.PipeMaterial;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.quantity.Volume;
import app.ramkeeper.sizing.source.DrySeason;
import app.ramkeeper.sizing.source.FloatArea;
import app.ramkeeper.sizing.source.FlowMeasurement;
import app.ramkeeper.sizing.source.RectangularWeir;
import app.ramkeeper.sizing.source.VNotch;
import app.ramkeeper.sizing.surge.Anchorage;
import app.ramkeeper.sizing.surge.DeadHead;
import app.ramkeeper.sizing.surge.Pulses;
import app.ramkeeper.sizing.surge.Surge;
import app.ramkeeper.sizing.vessel.PreCharge;
import app.ramkeeper.sizing.vessel.PreChargeRule;
import app.ramkeeper.sizing.vessel.VesselKind;
import app.ramkeeper.sizing.vessel.VesselVolume;
import app.ramkeeper.sizing.water.Ambient;
import app.ramkeeper.sizing.water.Atmosphere;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Worked values of the Javadoc, and the refusals that keep people safe. */
class WorkedValueTests {

    @Test
    void measuresWithUncertainty() {
        FlowMeasurement notch = VNotch.rightAngled().measure(new Uncertain(0.1, 0.002), 0.5, 9.80665);

        assertThat(notch.flow().litresPerSecond()).isCloseTo(4.41, within(0.01));
        assertThat(notch.relativeUncertainty()).isCloseTo(0.053, within(0.001));
        assertThat(FloatArea.area(new double[] {0, 0.5, 1, 1.5, 2}, new double[] {0, 0.2, 0.3, 0.1, 0}))
                .isCloseTo(0.30, within(1e-12));
        assertThat(new DrySeason(new Uncertain(0, 0), Flow.NONE).usable(notch).notes())
                .anyMatch(note -> note.code() == Note.Code.CAUTION);
    }

    @Test
    void storesForThePeak() {
        Flow day = Flow.ofLitresPerDay(2400);

        assertThat(DayPattern.of(6, 4).storage(day, day).value().litres()).isCloseTo(2000, within(1e-6));
    }

    @Test
    void checksTheShutDelivery() {
        Pressure shut = DeadHead.pressure(Head.ofMetres(2), 1, 1300, Ambient.standard());
        DeadHead result = DeadHead.check(
                shut,
                List.of(
                        new DeadHead.Part("pump", Pressure.ofBar(16)),
                        new DeadHead.Part("vessel", Pressure.ofBar(10))));

        assertThat(shut.bar()).isCloseTo(13.2, within(0.05));
        assertThat(result.checks()).extracting(check -> check.verdict()).containsExactly(Verdict.FAILS, Verdict.HOLDS);
        assertThat(result.notes()).hasSize(1);
        assertThat(Pulses.of(PipeMaterial.PVC_U, Pulses.Place.BESIDE_PUMP, 60, 0.9)
                        .fit())
                .isFalse();
        assertThat(Pulses.perYear(60, 0.9)).isCloseTo(28.4e6, within(0.05e6));
        assertThat(DriveWall.wallFor(Pressure.ofBar(20), Length.ofMillimetres(60.3), 65e6, DriveWall.threadDepth(50))
                        .millimetres())
                .isCloseTo(2.41, within(0.01));
    }

    @Test
    void chargesTheVessel() {
        PreCharge fifty = advise(50, 10);

        assertThat(fifty.charge().orElseThrow().bar()).isCloseTo(4.40, within(0.01));
        assertThat(advise(50, 4).charge()).isEmpty();
        assertThat(advise(300, 40).notes())
                .singleElement()
                .extracting(Note::code)
                .isEqualTo(Note.Code.ASK_ENGINEER);
        assertThat(PreCharge.atTemperature(
                                Pressure.ofBar(4.5),
                                Temperature.ofCelsius(30),
                                Temperature.ofCelsius(5),
                                Atmosphere.SEA_LEVEL)
                        .bar())
                .isCloseTo(4.05, within(0.01));
        assertThat(PreCharge.toSetElsewhere(Pressure.ofBar(4.5), Atmosphere.at(500), Atmosphere.SEA_LEVEL)
                        .bar())
                .isCloseTo(4.44, within(0.01));
        assertThatThrownBy(() -> VesselVolume.drawdown(
                        Volume.ofLitres(10),
                        Pressure.ofBar(3),
                        Pressure.ofBar(2),
                        Pressure.ofBar(4),
                        Atmosphere.SEA_LEVEL))
                .hasMessageContaining("charge");
    }

    @Test
    void runsTheWaveInTheDrivePipe() {
        PipeType steel = PipeCatalogue.find(PipeCatalogue.galvanisedSteel(), 50, "medium")
                .orElseThrow();
        DrivePipe drive = new DrivePipe(steel, Length.ofMetres(12), Head.ofMetres(2), Anchorage.THROUGHOUT);

        assertThat(drive.waveSpeed(Ambient.standard())).isCloseTo(1348, within(1.0));
        assertThat(drive.peak(1, Ambient.standard()).bar()).isCloseTo(13.7, within(0.05));
        assertThat(Surge.closing(1000, 1000, 2500, 1.2, 10).kilopascals()).isCloseTo(600, within(1e-9));
    }

    @Test
    void sizesTheVesselAndTheWeir() {
        Volume vessel = VesselVolume.needed(
                Volume.ofLitres(0.15),
                Pressure.ofBar(4.4),
                Pressure.ofBar(5),
                Pressure.ofBar(0.5),
                Pressure.ofBar(1.013),
                VesselVolume.ADIABATIC);

        assertThat(vessel.litres()).isCloseTo(2.77, within(0.005));
        assertThat(RectangularWeir.measureContracted(0.5, new Uncertain(0.1, 0.002))
                        .relativeUncertainty())
                .isCloseTo(0.042, within(0.0005));
    }

    private static PreCharge advise(double lift, double ratingBar) {
        return PreCharge.advise(
                Head.ofMetres(lift),
                VesselKind.BLADDER,
                Pressure.ofBar(ratingBar),
                Optional.empty(),
                PreChargeRule.usual(),
                Ambient.standard());
    }
}
