package app.ramkeeper.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.sizing.design.Deviation;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Temperature;
import app.ramkeeper.sizing.quantity.Uncertain;
import app.ramkeeper.sizing.ram.Efficiency;
import app.ramkeeper.sizing.vessel.PreCharge;
import app.ramkeeper.sizing.vessel.PreChargeRule;
import app.ramkeeper.sizing.vessel.VesselKind;
import app.ramkeeper.sizing.water.Ambient;
import app.ramkeeper.sizing.water.Atmosphere;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The phone's formulas against the sizing library's: same numbers, 10,000 random cases. */
class FieldNumbersBrowserTests extends BrowserRun {

    private static final int CASES = 10_000;
    private static final int OUT = 9;

    @Test
    void phoneAndLibraryGiveTheSameNumbers() {
        Random random = new Random(20260214);
        List<double[]> cases = new ArrayList<>();
        for (int i = 0; i < CASES; i++) {
            double fall = 0.5 + 20 * random.nextDouble();
            double lift = fall + 0.1 + 210 * random.nextDouble();
            double drive = 1e-5 + 0.05 * random.nextDouble();
            double delivered = drive * 0.999 * random.nextDouble();
            cases.add(new double[] {
                fall,
                lift,
                drive,
                delivered,
                40 * random.nextDouble(),
                -400 + 5000 * random.nextDouble(),
                1e5 + 3e6 * random.nextDouble(),
                -20 + 60 * random.nextDouble(),
                0.1 * random.nextDouble(),
                0.2 * random.nextDouble()
            });
        }
        Page page = phone();
        page.navigate("/field");
        Object told = page.evaluate(
                """
                async (cases) => { const c = await import(document.querySelector('script[type=module]').src.replace('app.js', 'calc.js'));
                  return cases.flatMap(([fall, lift, drive, delivered, t, alt, rating, gas, u, ue]) => { const p = c.preCharge(lift, t, rating);
                    const d = c.deviation(delivered, u * delivered, drive, ue * drive);
                    return [c.density(t), c.air(alt), c.pressureOf(lift, t), c.dAubuisson(drive, delivered, fall, lift), c.rankine(drive, delivered, fall, lift),
                      p.charge ?? -1, c.atTemperature(rating, t, gas, c.air(alt)), d.percent + d.u, c.toSetElsewhere(rating, c.air(alt), c.air(0))]; }); }""",
                cases.stream()
                        .map(c -> java.util.Arrays.stream(c).boxed().toList())
                        .toList());
        List<?> numbers = (List<?>) told;
        assertThat(numbers).hasSize(CASES * OUT);
        int refused = 0;
        for (int i = 0; i < CASES; i++) {
            double[] expected = expected(cases.get(i));
            for (int k = 0; k < OUT; k++) {
                double said = ((Number) numbers.get(i * OUT + k)).doubleValue();
                assertThat(said)
                        .as("case %d, number %d", i, k)
                        .isCloseTo(expected[k], within(1e-9 * Math.max(1e-12, Math.abs(expected[k]))));
            }
            refused += expected[5] == -1 ? 1 : 0;
        }
        assertThat(refused).isBetween(100, CASES - 100);
    }

    private static double[] expected(double[] c) {
        Ambient water = Ambient.of(c[4], 0);
        Flow drive = new Flow(c[2]);
        Flow delivered = new Flow(c[3]);
        Head fall = new Head(c[0]);
        Head lift = new Head(c[1]);
        double charge = PreCharge.advise(
                        lift, VesselKind.BLADDER, new Pressure(c[6]), Optional.empty(), PreChargeRule.usual(), water)
                .charge()
                .map(Pressure::pascals)
                .orElse(-1.0);
        Deviation off = Deviation.of(new Uncertain(c[3], c[8] * c[3]), new Uncertain(c[2], c[9] * c[2]));
        return new double[] {
            water.water().density(),
            Atmosphere.at(c[5]).pascals(),
            water.pressureOf(lift).pascals(),
            Efficiency.dAubuisson(drive, delivered, fall, lift),
            Efficiency.rankine(drive, delivered, fall, lift),
            charge,
            PreCharge.atTemperature(
                            new Pressure(c[6]),
                            Temperature.ofCelsius(c[4]),
                            Temperature.ofCelsius(c[7]),
                            Atmosphere.at(c[5]))
                    .pascals(),
            off.percent() + off.standardUncertaintyPercent(),
            PreCharge.toSetElsewhere(new Pressure(c[6]), Atmosphere.at(c[5]), Atmosphere.at(0))
                    .pascals()
        };
    }
}
