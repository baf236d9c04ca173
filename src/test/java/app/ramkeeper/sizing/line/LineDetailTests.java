package app.ramkeeper.sizing.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.pipe.Friction;
import app.ramkeeper.sizing.pipe.PipeCatalogue;
import app.ramkeeper.sizing.pipe.PipeRun;
import app.ramkeeper.sizing.pipe.PipeType;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.quantity.Verdict;
import app.ramkeeper.sizing.water.Ambient;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Lines of several stretches and outlets; heads summed up by hand from {@link Friction}, which has its own checks. */
class LineDetailTests {

    private static final Ambient AMBIENT = Ambient.standard();
    private static final double FLOW = 20 / 60e3;

    private final PipeType wide = pe(40, "SDR 11");
    private final PipeType narrow = pe(32, "SDR 11");
    private final GroundProfile slope = GroundProfile.of(0, 10, 100, 30, 300, 90);
    private final LineLoad load = LineLoad.of(new Flow(FLOW), AMBIENT);

    @Test
    void addsUpStretchesOfDifferentPipe() {
        DeliveryLine line = line(
                List.of(Stretch.of(150, wide), new Stretch(300, narrow, new Length(5e-5), 6)),
                List.of(Outlet.tank(300, 91)));

        LineResult result = line.under(load);

        double first = loss(FLOW, wide, Math.hypot(100, 20) + Math.hypot(50, 15), 1e-5, 0);
        double second = loss(FLOW, narrow, Math.hypot(150, 45), 5e-5, 6);
        assertThat(result.lift().metres()).isEqualTo(81);
        assertThat(result.frictionM()).isCloseTo(first + second, within(1e-9));
        assertThat(result.headAtPump().metres()).isCloseTo(81 + first + second, within(1e-9));
        assertThat(result.stretches().get(0).lossM()).isCloseTo(first, within(1e-9));
        assertThat(result.stretches().get(1).lossM()).isCloseTo(second, within(1e-9));
        assertThat(result.stretches()).extracting(StretchResult::fromM).containsExactly(0.0, 150.0);
        double bore = narrow.bore().metres();
        assertThat(result.stretches().get(1).velocityMs()).isCloseTo(FLOW / (Math.PI / 4 * bore * bore), within(1e-12));
        assertThat(result.points()).extracting(LinePoint::chainageM).containsExactly(0.0, 100.0, 150.0, 300.0);
        assertThat(result.allChecks()).hasSize(3);
    }

    @Test
    void findsTheLeastClassThatBearsAStretch() {
        DeliveryLine line = line(
                List.of(Stretch.of(150, pe(40, "SDR 21")), Stretch.of(300, pe(40, "SDR 21"))),
                List.of(Outlet.tank(300, 91)));

        LineResult result = line.under(load);

        // 81 m and friction are 8 bar and more: too much for PN 8 below, where PN 10 (SDR 17) is the least that bears
        // it
        StretchResult low = result.stretches().get(0);
        assertThat(low.greatest().bar()).isBetween(8.0, 9.0);
        assertThat(low.rating().verdict()).isEqualTo(Verdict.FAILS);
        assertThat(low.leastClass().orElseThrow().series()).isEqualTo("SDR 17");
        assertThat(result.stretches().get(1).rating().verdict()).isEqualTo(Verdict.HOLDS);
    }

    @Test
    void countsTheShutDeliveryAndWarmPipe() {
        DeliveryLine line = line(List.of(Stretch.of(300, wide)), List.of(Outlet.tank(300, 91)));

        LineResult shut = line.under(
                new LineLoad(new Flow(FLOW), AMBIENT, Temperature.ofCelsius(30), Optional.of(Pressure.ofBar(15))));

        StretchResult stretch = shut.stretches().get(0);
        assertThat(stretch.greatest().bar()).isCloseTo(15, within(1e-6));
        // PN 16 less 13 % at 30 degC
        assertThat(stretch.rating().verdict()).isEqualTo(Verdict.FAILS);
        assertThat(shut.points().get(0).shutHeadM())
                .isEqualTo(shut.points().get(0).greatestHeadM());
        assertThat(line.under(load).points().get(0).shutHeadM()).isNaN();
    }

    @Test
    void countsTheBranchOfAnOutlet() {
        PipeRun branch = new PipeRun(new Length(0.0204), new Length(60), new Length(1e-5), 3);
        Outlet trough = new Outlet("trough", 100, 55, 0.4, 5, Optional.of(branch));
        Outlet tank = new Outlet("tank", 300, 91, 0.6, 0, Optional.empty());

        LineResult result =
                line(List.of(Stretch.of(300, wide)), List.of(trough, tank)).under(load);

        double lower = loss(0.6 * FLOW, wide, Math.hypot(200, 60), 1e-5, 0);
        double upper = loss(FLOW, wide, Math.hypot(100, 20), 1e-5, 0);
        double inBranch = Friction.headLoss(
                0.4 * FLOW, 0.0204, 60, 1e-5, 3, AMBIENT.water().kinematicViscosity(), AMBIENT.gravity());
        assertThat(result.headAtPump().metres()).isCloseTo(81 + lower + upper, within(1e-9));
        OutletResult left = result.outlets().get(0);
        assertThat(left.flow().cubicMetresPerSecond()).isCloseTo(0.4 * FLOW, within(1e-15));
        assertThat(left.headM()).isCloseTo(91 + lower - inBranch - 55, within(1e-9));
        assertThat(left.surplusM()).isCloseTo(left.headM() - 5, within(1e-12));
        assertThat(result.stretches().get(0).velocityMs())
                .isCloseTo(Friction.velocity(FLOW, wide.bore().metres()), within(1e-12));
    }

    @Test
    void letsAHighBranchSetTheHead() {
        Outlet house = new Outlet("house", 100, 120, 0.5, 8, Optional.empty());
        Outlet tank = new Outlet("tank", 300, 91, 0.5, 0, Optional.empty());

        LineResult result =
                line(List.of(Stretch.of(300, wide)), List.of(house, tank)).under(load);

        double upper = loss(FLOW, wide, Math.hypot(100, 20), 1e-5, 0);
        assertThat(result.headAtPump().metres()).isCloseTo(118 + upper, within(1e-9));
        assertThat(result.outlets().get(0).surplusM()).isCloseTo(0, within(1e-9));
        double lower = loss(0.5 * FLOW, wide, Math.hypot(200, 60), 1e-5, 0);
        assertThat(result.outlets().get(1).surplusM()).isCloseTo(128 - lower - 91, within(1e-9));
        assertThat(result.points().get(2).runningHeadM()).isCloseTo(128 - lower - 90, within(1e-9));
    }

    @Test
    void namesHighAndLowPoints() {
        GroundProfile rolling = GroundProfile.of(0, 0, 50, 20, 80, 12, 140, 40, 160, 40, 200, 60);

        assertThat(rolling.highestM()).isEqualTo(60);
        assertThat(rolling.highPoints()).containsExactly(new GroundPoint(50, 20));
        assertThat(rolling.lowPoints()).containsExactly(new GroundPoint(0, 0), new GroundPoint(80, 12));
        assertThat(rolling.levelAt(65)).isCloseTo(16, within(1e-12));
    }

    @Test
    void drainsAtThePumpBeforeTheFirstClimb() {
        assertThat(GroundProfile.of(0, 5, 10, 5, 20, 15).lowPoints()).containsExactly(new GroundPoint(0, 5));
        assertThat(GroundProfile.of(0, 5, 10, 5, 20, 2, 30, 9).lowPoints()).containsExactly(new GroundPoint(20, 2));
    }

    @Test
    void carriesAHeldHeadOnlyToTheNextOpenHighPoint() {
        // the house holds the grade at 128 m; the ridge beyond stands above it, is open, and the tank lies behind
        GroundProfile ridge = GroundProfile.of(0, 10, 100, 30, 200, 140, 300, 90);
        Outlet house = new Outlet("house", 100, 120, 0.5, 8, Optional.empty());
        Outlet tank = new Outlet("tank", 300, 91, 0.5, 0, Optional.empty());
        LineResult over = new DeliveryLine(ridge, List.of(Stretch.of(300, wide)), List.of(house, tank)).under(load);

        double climb = loss(0.5 * FLOW, wide, Math.hypot(100, 110), 1e-5, 0);
        assertThat(over.points().get(1).gradeM()).isCloseTo(140 + climb, within(1e-9));
        assertThat(over.points().get(2).runningHeadM()).isZero();
        assertThat(over.outlets().get(1).surplusM()).isCloseTo(0, within(1e-9));
        for (int i = 1; i < over.points().size(); i++) {
            assertThat(over.points().get(i).gradeM())
                    .isLessThan(over.points().get(i - 1).gradeM());
        }
    }

    @Test
    void namesTheStandardThatDerates() {
        DeliveryLine line = line(List.of(Stretch.of(300, wide)), List.of(Outlet.tank(300, 91)));
        LineLoad warm = new LineLoad(new Flow(FLOW), AMBIENT, Temperature.ofCelsius(30), Optional.empty());

        assertThat(line.under(warm).stretches().get(0).rating().sentence())
                .endsWith("Its 16.0 bar are derated for a wall of 30 degC by EN 12201-1 annex A / ISO 13761.");
        assertThat(line.under(load).stretches().get(0).rating().sentence()).doesNotContain("derated");
    }

    @Test
    void refusesLinesThatDoNotReach() {
        assertThatThrownBy(() -> line(List.of(Stretch.of(200, wide)), List.of(Outlet.tank(300, 91))))
                .hasMessageContaining("stretch");
        assertThatThrownBy(() -> line(List.of(Stretch.of(300, wide)), List.of(Outlet.tank(400, 91))))
                .hasMessageContaining("tank");
        assertThatThrownBy(() -> GroundProfile.of(0, 0, 0, 5)).hasMessageContaining("chainage");
        assertThatThrownBy(() -> GroundProfile.of(0, 0, 5)).hasMessageContaining("pairs");
        assertThatThrownBy(() -> new Outlet("tank", 1, 1, 1.2, 0, Optional.empty()))
                .hasMessageContaining("share of tank");
    }

    private DeliveryLine line(List<Stretch> stretches, List<Outlet> outlets) {
        return new DeliveryLine(slope, stretches, outlets);
    }

    private static double loss(double flow, PipeType pipe, double length, double roughness, double fittings) {
        return Friction.headLoss(
                flow,
                pipe.bore().metres(),
                length,
                roughness,
                fittings,
                AMBIENT.water().kinematicViscosity(),
                AMBIENT.gravity());
    }

    private static PipeType pe(int nominal, String series) {
        return PipeCatalogue.find(PipeCatalogue.pe100(), nominal, series).orElseThrow();
    }
}
