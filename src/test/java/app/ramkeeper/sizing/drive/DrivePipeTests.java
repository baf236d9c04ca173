package app.ramkeeper.sizing.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.pipe.PipeMaterial;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.surge.Anchorage;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrivePipeTests {

    private static final Ambient AMBIENT = Ambient.standard();

    private final PipeType steel = find(PipeCatalogue.galvanisedSteel(), 50, "medium");

    @Test
    void holdsAGoodPipeAgainstEveryRule() {
        List<Check> checks =
                drive(steel, 24, 4).checks(Flow.ofLitresPerMinute(50), 1.2, LengthRule.FALLS_5_TO_12, AMBIENT);

        assertThat(checks)
                .extracting(Check::rule)
                .containsExactly(
                        "Drive pipe length, 150 to 1000 bores",
                        "Drive pipe length, 5 to 12 falls",
                        "Drive pipe length, at least the fall",
                        "Mean velocity in the drive pipe",
                        "Bore for the drive flow, handbook table less a tenth",
                        "Surge in the drive pipe",
                        "Wall of the drive pipe under its thread",
                        "Material of the drive pipe");
        assertThat(checks).noneMatch(check -> check.verdict() == Verdict.FAILS);
        assertThat(drive(steel, 24, 4).meanVelocity(Flow.ofLitresPerMinute(60))).isCloseTo(0.45, within(0.005));
    }

    @ParameterizedTest(name = "{0} m, {1} m of fall, {2} l/min, closing at {3} m/s: {4} {5}")
    @CsvSource({
        "6,  4, 60,  1.2, 'Drive pipe length, 150 to 1000 bores', FAILS",
        "60, 4, 60,  1.2, 'Drive pipe length, 150 to 1000 bores', FAILS",
        "12, 4, 60,  1.2, 'Drive pipe length, 5 to 12 falls', FAILS",
        "50, 4, 60,  1.2, 'Drive pipe length, 5 to 12 falls', FAILS",
        "9,  10, 60, 1.2, 'Drive pipe length, at least the fall', FAILS",
        "24, 4, 150, 1.2, Mean velocity in the drive pipe, FAILS",
        "24, 4, 130, 1.2, Mean velocity in the drive pipe, CLOSE",
        "24, 4, 60,  1.2, Mean velocity in the drive pipe, HOLDS",
        "24, 4, 100, 1.2, 'Bore for the drive flow, handbook table less a tenth', FAILS",
        "24, 4, 94,  1.2, 'Bore for the drive flow, handbook table less a tenth', FAILS",
        "24, 4, 50,  1.2, 'Bore for the drive flow, handbook table less a tenth', HOLDS",
        "24, 4, 60,  2.5, Surge in the drive pipe, FAILS",
        "24, 4, 60,  1.2, Surge in the drive pipe, HOLDS",
    })
    void holdsEachRuleToItsNumber(
            double length, double fall, double flow, double closing, String rule, Verdict verdict) {
        List<Check> checks = drive(steel, length, fall)
                .checks(Flow.ofLitresPerMinute(flow), closing, LengthRule.FALLS_5_TO_12, AMBIENT);

        assertThat(checks)
                .filteredOn(check -> check.rule().equals(rule))
                .singleElement()
                .extracting(Check::verdict)
                .isEqualTo(verdict);
    }

    @Test
    void saysNothingOfTheBoreOutsideTheTable() {
        assertThat(drive(steel, 24, 4).checks(Flow.ofLitresPerMinute(250), 1.2, LengthRule.BORES_150_TO_1000, AMBIENT))
                .noneMatch(check -> check.rule().startsWith("Bore"))
                .noneMatch(check -> check.rule().contains("falls"));
    }

    @Test
    void notesWhereTheTableHasNoBore() {
        DrivePipe pipe = drive(steel, 24, 4);

        assertThat(pipe.notes(Flow.ofLitresPerMinute(200))).isEmpty();
        assertThat(pipe.notes(Flow.ofLitresPerMinute(201))).singleElement().satisfies(note -> {
            assertThat(note.code()).isEqualTo(Note.Code.OUTSIDE_RANGE);
            assertThat(note.sentence()).contains("drive flow is 201 l/min, outside the 3 to 200 l/min");
        });
    }

    /** 219.1 x 6.3 mm, 20.8 bar at most: p D/2s is 3.5 mm and no thread is cut. */
    @Test
    void cutsNoThreadIntoFlangedPipe() {
        PipeType wide = new PipeType(
                "own",
                PipeMaterial.GALVANISED_STEEL,
                "welded",
                200,
                Length.ofMillimetres(219.1),
                Length.ofMillimetres(6.3),
                Pressure.ofBar(25));
        DrivePipe pipe = drive(wide, 40, 4);
        double needed = pipe.peak(1.2, AMBIENT).pascals() * 219.1 / (2 * DriveWall.ALLOWED_STRESS);

        assertThat(pipe.checks(Flow.ofLitresPerMinute(1500), 1.2, LengthRule.BORES_150_TO_1000, AMBIENT))
                .filteredOn(check -> check.rule().startsWith("Wall"))
                .singleElement()
                .satisfies(check -> assertThat(check.limit()).isCloseTo(needed, within(1e-9)));
    }

    @Test
    void judgesTheMaterial() {
        assertThat(material(find(PipeCatalogue.pe100(), 63, "SDR 11"))).isEqualTo(Verdict.CLOSE);
        assertThat(material(PipeCatalogue.pvcU().stream()
                        .filter(type -> type.nominal() >= 50)
                        .findFirst()
                        .orElseThrow()))
                .isEqualTo(Verdict.FAILS);
        assertThat(material(steel)).isEqualTo(Verdict.HOLDS);
    }

    @Test
    void computesTheWaveAndTheWall() {
        // Korteweg by hand for the wall of 3.6 mm: see the class on surge; the rule of thumb for steel is 1300 to 1350
        assertThat(drive(steel, 24, 2).waveSpeed(AMBIENT)).isCloseTo(1348, within(1.0));
        assertThat(DriveWall.threadDepth(20).millimetres()).isEqualTo(1.162);
        assertThat(DriveWall.threadDepth(25).millimetres()).isEqualTo(1.479);
        assertThat(DriveWall.wallFor(Pressure.ofBar(20), Length.ofMillimetres(60.3), 65e6, new Length(0))
                        .millimetres())
                .isCloseTo(2.41 - 1.479, within(0.01));
        assertThatThrownBy(() -> DriveWall.threadDepth(200)).hasMessageContaining("nominal size");
        assertThatThrownBy(() -> drive(steel, 0, 2)).hasMessageContaining("drive pipe length");
        assertThatThrownBy(() -> drive(steel, 24, 0)).hasMessageContaining("fall");
    }

    @Test
    void printsTheHandbookTable() {
        assertThat(RamSize.table()).hasSize(7);
        assertThat(RamSize.forDriveFlow(Flow.ofLitresPerMinute(50)))
                .extracting(size -> Math.round(size.driveBore().millimetres()))
                .containsExactly(50L, 65L);
        assertThat(RamSize.forDriveFlow(Flow.ofLitresPerMinute(2.9))).isEmpty();
        assertThat(RamSize.forDriveFlow(Flow.ofLitresPerMinute(3))).hasSize(1);
        assertThat(RamSize.forDriveFlow(Flow.ofLitresPerMinute(200))).hasSize(1);
    }

    private static Verdict material(PipeType type) {
        return drive(type, 24, 4)
                .checks(Flow.ofLitresPerMinute(60), 0.5, LengthRule.BORES_150_TO_1000, AMBIENT)
                .stream()
                .filter(check -> check.rule().startsWith("Material"))
                .findFirst()
                .orElseThrow()
                .verdict();
    }

    private static DrivePipe drive(PipeType type, double length, double fall) {
        return new DrivePipe(type, new Length(length), new Head(fall), Anchorage.THROUGHOUT);
    }

    private static PipeType find(List<PipeType> types, int nominal, String series) {
        return PipeCatalogue.find(types, nominal, series).orElseThrow();
    }
}
