package app.ramkeeper.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * What the phone says of readings, case by case. The install: 4 m of fall, 30 m of lift, a baseline of 60 l/min of drive water,
 * 4.8 l/min delivered and 62 beats a minute, left at 3 turns; the library expects 8 % of the drive water to arrive, give or take
 * 7 % of that. Percentages are by hand.
 */
class FieldDiagnosisBrowserTests extends BrowserRun {

    private static final String SOURCE = "The source level";
    private static final String STRAINER = "The strainer";
    private static final String SETTING = "The valve setting, has it moved: it was left at 3 turns";
    private static final String LEAKS = "Leaks on drive and delivery pipe";
    private static final String AIR = "Air drawn in";
    private static final String CHARGE = "The pre-charge";
    private static final String FLOAT = "A float or branch at the tank end";
    private static final String RUBBERS =
            "The rubbers: waste valve 3.0 years (changed Fri 1 Dec 2023); delivery valve age not known";

    /**
     * Readings as JavaScript and what must be said of them.
     *
     * @param said parts of what is said, in this order
     * @param never what must not be said
     * @param look how each place to look at begins, in order, and no other
     */
    private record Case(String name, String readings, List<String> said, List<String> never, List<String> look) {}

    private static final List<Case> CASES = List.of(
            new Case(
                    "as usual",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: 4.7, BEAT_RATE: 62",
                    List.of(
                            "Delivered flow is as the baseline, and as the 4.8 l/min that the sizing library expects",
                            "As usual",
                            "Efficiency (D'Aubuisson) 59 %, at the baseline 60 %"),
                    List.of("below", "above"),
                    List.of()),
            new Case(
                    "well above what the library expects is not said to be as it",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: 7.2, BEAT_RATE: 62",
                    List.of("50 % above the baseline, and 50 % above the 4.8 l/min"),
                    List.of("as the 4.8"),
                    List.of()),
            new Case(
                    "above, but not by more than the table may be off: both are said",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: [5.9, 0.9]",
                    List.of("23 % above the 4.8 l/min", "which it is not sure of to that"),
                    List.of("as the 4.8"),
                    List.of()),
            new Case(
                    "a tenth less is within what two such readings can tell",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: 4.32, BEAT_RATE: 62",
                    List.of("as the baseline"),
                    List.of("below"),
                    List.of()),
            new Case(
                    "a sixth less, timed in many runs, is more than the baseline's own uncertainty",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: [4.0, 0.02], BEAT_RATE: 62",
                    List.of("Delivered flow is 17 % below the baseline"),
                    List.of(),
                    List.of(SETTING, LEAKS, AIR, CHARGE, FLOAT, RUBBERS)),
            new Case(
                    "less because it gets less drive water: the pump is not to blame",
                    "DRIVE_FLOW: 42, DELIVERED_FLOW: 3.36, BEAT_RATE: 62",
                    List.of(
                            "Delivered flow is 30 % below the baseline, and as the 3.36 l/min that the sizing library expects",
                            "Drive flow is 30 % below the baseline.",
                            "The pump is doing as well as ever: less arrives because it gets less drive water."),
                    List.of("rubbers"),
                    List.of(SOURCE, STRAINER, SETTING)),
            new Case(
                    "less drive water and less of it arrives: source and strainer first, then the rest",
                    "DRIVE_FLOW: 42, DELIVERED_FLOW: 2.2, BEAT_RATE: 62",
                    List.of("54 % below the baseline", "35 % below the 3.36 l/min"),
                    List.of("as well as ever"),
                    List.of(SOURCE, STRAINER, SETTING, LEAKS, AIR, CHARGE, FLOAT, RUBBERS)),
            new Case(
                    "drive water as ever, so source and strainer are not it",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: 3.3, BEAT_RATE: 62",
                    List.of("31 % below the baseline, and 31 % below the 4.8 l/min"),
                    List.of("as well as ever"),
                    List.of(SETTING, LEAKS, AIR, CHARGE, FLOAT, RUBBERS)),
            new Case(
                    "drive flow not read",
                    "DELIVERED_FLOW: 3.3",
                    List.of("31 % below the baseline.", "Measure the drive flow"),
                    List.of("sizing library"),
                    List.of(SOURCE, STRAINER, SETTING, LEAKS, AIR, CHARGE, FLOAT, RUBBERS)),
            new Case(
                    "beat and drive flow up: the setting was moved",
                    "DRIVE_FLOW: 80, DELIVERED_FLOW: 5.0, BEAT_RATE: 50",
                    List.of("Drive flow is 33 % above the baseline.", "The beat is 19 % below the baseline."),
                    List.of("As usual"),
                    List.of(
                            SETTING
                                    + "; the beat is 19 % below the baseline; the pump takes more drive water than it did.",
                            LEAKS,
                            AIR,
                            CHARGE,
                            FLOAT,
                            RUBBERS)),
            new Case(
                    "the beat alone",
                    "BEAT_RATE: 75",
                    List.of("The beat is 21 % above the baseline."),
                    List.of("As usual"),
                    List.of(SETTING)),
            new Case(
                    "water lost on the way",
                    "DRIVE_FLOW: 60, WASTE_FLOW: 40, DELIVERED_FLOW: 3.3, BEAT_RATE: 62",
                    List.of("31 % below the baseline"),
                    List.of(),
                    List.of(
                            SETTING,
                            LEAKS + ": 16.7 l/min of the drive flow are neither waste nor delivered.",
                            AIR,
                            CHARGE,
                            FLOAT,
                            RUBBERS)),
            new Case(
                    "pre-charge lost, at 29.4 m of pressure less half a bar",
                    "PRE_CHARGE: 1.2",
                    List.of(),
                    List.of("As usual"),
                    List.of("The pre-charge: it is 51 % below the 2.44 bar for this lift.")),
            new Case(
                    "a right pre-charge and an even pressure are ruled out",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: 3.3, PRE_CHARGE: 2.4, DELIVERY_PRESSURE: 3.0",
                    List.of("31 % below the baseline"),
                    List.of(),
                    List.of(SETTING, LEAKS, AIR, RUBBERS)),
            new Case(
                    "a branch partly shut at the tank end",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: 3.3, PRE_CHARGE: 2.4, DELIVERY_PRESSURE: 3.9",
                    List.of("31 % below the baseline"),
                    List.of(),
                    List.of(
                            SETTING,
                            LEAKS,
                            AIR,
                            FLOAT + ", partly shut? The delivery pressure is 30 % above what this lift gives.",
                            RUBBERS)),
            new Case(
                    "the source stands lower: another duty, which the table is not of",
                    "FALL: 3, DRIVE_FLOW: 42, DELIVERED_FLOW: 2.5",
                    List.of(
                            "48 % below the baseline.",
                            "With another fall than in the register",
                            "as well as ever: less arrives because it gets less drive water and less fall.",
                            "Efficiency (D'Aubuisson) 60 %, at the baseline 60 %"),
                    List.of("sizing library expects"),
                    List.of(SOURCE + ": the fall reads 3 m, 4 m in the register.", STRAINER, SETTING)),
            new Case(
                    "nothing arrives but it beats",
                    "DELIVERED_FLOW: 0, BEAT_RATE: 40",
                    List.of("Nothing arrives, but the pump beats. Is the float or a branch shut at the tank end?"),
                    List.of("below"),
                    List.of()),
            new Case(
                    "more than falling water can lift",
                    "DRIVE_FLOW: 60, DELIVERED_FLOW: 9",
                    List.of("88 % above the baseline", "read both flows again"),
                    List.of("Efficiency"),
                    List.of()));

    @Test
    void eachCaseIsSaidInWordsAndInOrder() {
        Page page = phone();
        page.navigate("/field");
        for (Case c : CASES) {
            Map<?, ?> told = (Map<?, ?>) page.evaluate("""
                    async (text) => { const m = await import(document.querySelector('script[type=module]').src.replace('app.js', 'diagnosis.js'));
                      const l = 1e-3 / 60;
                      const si = { DRIVE_FLOW: l, WASTE_FLOW: l, DELIVERED_FLOW: l, BEAT_RATE: 1 / 60, DELIVERY_PRESSURE: 1e5, PRE_CHARGE: 1e5, FALL: 1 };
                      const readings = Object.fromEntries(text.split(/, (?=[A-Z])/).map((one) => { const [q, v] = one.split(': '); const [x, u] = [].concat(JSON.parse(v));
                        return [q, { si: x * si[q], u: u === undefined ? undefined : u * si[q] }]; }));
                      const install = { fall: 4, lift: 30, setting: '3 turns', baseline: { drive: 60 * l, delivered: 4.8 * l, beat: 62 / 60 },
                        pumps: [{ vessel: 'BLADDER' }], rubbers: [{ position: 'WASTE_VALVE', fitted: '2023-12-01' }, { position: 'DELIVERY_VALVE', fitted: null }] };
                      const table = [20, 40, 60, 80, 100].map((drive) => [drive * l, drive * 0.08 * l, drive * 0.08 * 0.07 * l, 3e5]);
                      return m.judge(install, { alt: 100 }, table, readings, '2026-12-01'); }""", c.readings());
            String said = String.join(" ", strings(told.get("said")));
            int from = 0;
            for (String part : c.said()) {
                assertThat(said.indexOf(part, from))
                        .as("%s: “%s” in “%s”", c.name(), part, said)
                        .isNotNegative();
                from = said.indexOf(part, from);
            }
            c.never().forEach(part -> assertThat(said).as(c.name()).doesNotContain(part));
            List<String> look = strings(told.get("look"));
            assertThat(look).as("%s: %s", c.name(), said).hasSize(c.look().size());
            for (int i = 0; i < look.size(); i++) {
                assertThat(look.get(i)).as(c.name()).startsWith(c.look().get(i));
            }
        }
    }

    @Test
    void youngRubbersAreOfDaysOrMonths() {
        Page page = phone();
        page.navigate("/field");
        Map.of(
                        "2026-12-01", "waste valve new today.",
                        "2026-11-30", "waste valve 1 day (changed",
                        "2026-10-15", "waste valve 47 days (changed",
                        "2026-08-30", "waste valve 3 months (changed",
                        "2026-05-20", "waste valve 0.5 years (changed",
                        "2026-12-05", "waste valve newer than this visit (changed")
                .forEach((fitted, age) -> {
                    Object look = page.evaluate("""
                            async (fitted) => { const m = await import(document.querySelector('script[type=module]').src.replace('app.js', 'diagnosis.js'));
                              const l = 1e-3 / 60;
                              return m.judge({ fall: 4, lift: 30, baseline: { delivered: 4.8 * l }, rubbers: [{ position: 'WASTE_VALVE', fitted }] }, {}, null,
                                { DELIVERED_FLOW: { si: 2 * l } }, '2026-12-01').look.at(-1); }""", fitted);
                    assertThat(String.valueOf(look)).startsWith("The rubbers: " + age);
                });
    }

    private static List<String> strings(Object list) {
        return ((List<?>) list).stream().map(String::valueOf).toList();
    }
}
