package app.ramkeeper.sizing.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Pipe flow against a table made with the US EPA network engine 2.2 (Rossman et al. 2020, EPA-600/R-20/133).
 *
 * <p>The engine uses 64/Re, Dunlop's cubic and Swamee-Jain; this library Colebrook-White and its own cubic. So the table is
 * held twice: against the engine's own law, closely, and against the library's, to tell how far the two are apart.
 */
class EnginePipeFlowTests {

    /** The engine's gravity, 32.2 ft/s2. */
    private static final double ENGINE_GRAVITY = 32.2 * 0.3048;

    static List<EngineCase> cases() {
        return EngineCase.all();
    }

    @Test
    void hasEnoughCasesOfEveryKind() {
        assertThat(cases()).hasSizeGreaterThanOrEqualTo(200);
        assertThat(cases().stream().map(EngineCase::kind).distinct())
                .containsExactlyInAnyOrder("single", "slow", "battery-drive", "battery-delivery", "battery-split");
        assertThat(cases()).anyMatch(c -> c.reynolds() < 2000).anyMatch(c -> c.reynolds() > 1e5);
    }

    @ParameterizedTest(name = "US EPA engine, same law: {0}")
    @MethodSource("cases")
    void agreesUnderTheEnginesLaw(EngineCase row) {
        double factor = PublishedFriction.dunlop(row.reynolds(), row.roughnessM() / row.boreM());

        assertThat(row.lossBy(factor, ENGINE_GRAVITY)).isCloseTo(row.lossM(), within(0.005 * Math.abs(row.lossM())));
    }

    @Test
    @DisplayName("Laminar rows agree within 0.5 % with the library's own law")
    void laminarRowsAgree() {
        assertThat(worstDifference(row -> row.reynolds() < 2000)).isLessThan(0.005);
    }

    @Test
    @DisplayName("Turbulent rows are within 3 % of Colebrook-White: that is how far Swamee-Jain is from it here")
    void turbulentRowsAreNearColebrook() {
        assertThat(worstDifference(row -> row.reynolds() >= 4000)).isBetween(0.005, 0.03);
    }

    @Test
    @DisplayName(
            "Rows in transition are within 4 %: two cubics between the same laminar and nearly the same turbulent end")
    void transitionRowsAreNear() {
        assertThat(worstDifference(row -> row.reynolds() >= 2000 && row.reynolds() < 4000))
                .isLessThan(0.04);
    }

    private static double worstDifference(Predicate<EngineCase> which) {
        DoubleSummaryStatistics differences = cases().stream()
                .filter(which)
                .mapToDouble(row -> Math.abs(ours(row) / row.lossM() - 1))
                .summaryStatistics();
        assertThat(differences.getCount()).isGreaterThanOrEqualTo(5);
        return differences.getMax();
    }

    private static double ours(EngineCase row) {
        return Friction.headLoss(
                row.flowM3s(), row.boreM(), row.lengthM(), row.roughnessM(), row.fittings(), row.nu(), ENGINE_GRAVITY);
    }
}
