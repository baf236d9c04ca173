package app.ramkeeper.sizing.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every row of the table, none skipped; the row's source and provenance are in the name of its test. */
class HydraulicsReferenceTests {

    private static final Map<String, ReferenceEvaluator> EVALUATORS = evaluators();

    static List<ReferenceCase> rows() {
        return ReferenceTable.rows();
    }

    @Test
    void readsTheWholeTable() {
        assertThat(rows()).hasSize(186);
        assertThat(rows().stream().map(ReferenceCase::id)).doesNotHaveDuplicates();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void agreesWithTheOutside(ReferenceCase row) {
        ReferenceEvaluator evaluator = EVALUATORS.get(row.topic());
        assertThat(evaluator).as("evaluator of topic %s", row.topic()).isNotNull();

        double actual = evaluator.evaluate(row);

        assertWithin(row, actual);
    }

    private static void assertWithin(ReferenceCase row, double actual) {
        String[] tolerance = row.tolerance().split(":", 2);
        switch (tolerance[0]) {
            case "exact" -> assertThat(actual).isCloseTo(row.expected(), within(1e-9 * Math.max(1, row.expected())));
            case "abs" -> assertThat(actual).isCloseTo(row.expected(), within(Double.parseDouble(tolerance[1])));
            case "rel" ->
                assertThat(actual)
                        .isCloseTo(row.expected(), within(Double.parseDouble(tolerance[1]) * Math.abs(row.expected())));
            case "range" -> {
                String[] ends = tolerance[1].split("\\.\\.");
                assertThat(actual).isBetween(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]));
            }
            default -> throw new IllegalArgumentException("Unknown tolerance in " + row);
        }
    }

    private static Map<String, ReferenceEvaluator> evaluators() {
        Map<String, ReferenceEvaluator> all = new HashMap<>();
        List.of(
                        WaterReferenceCases.evaluators(),
                        PipeReferenceCases.evaluators(),
                        SurgeReferenceCases.evaluators(),
                        SourceReferenceCases.evaluators(),
                        VesselReferenceCases.evaluators(),
                        RamReferenceCases.evaluators())
                .forEach(part -> part.forEach((topic, evaluator) -> {
                    if (all.put(topic, evaluator) != null) {
                        throw new IllegalStateException("Two evaluators for topic " + topic);
                    }
                }));
        return all;
    }
}
