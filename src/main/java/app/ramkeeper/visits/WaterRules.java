package app.ramkeeper.visits;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a water record must keep to, whoever writes it; problems by field, in words. */
public final class WaterRules {

    private static final int LINE = 300;

    private WaterRules() {}

    /** The problems of a sample by field. */
    public static Map<String, String> broken(WaterCare.Sample sample) {
        Map<String, String> problems = new LinkedHashMap<>();
        length(problems, "reference", sample.reference(), LINE);
        length(problems, "place", sample.place(), LINE);
        length(problems, "takenBy", sample.takenBy(), LINE);
        length(problems, "laboratory", sample.laboratory(), LINE);
        length(problems, "remark", sample.remark(), 2_000);
        if (sample.nextOn() != null && !sample.nextOn().isAfter(sample.takenOn())) {
            problems.put("nextOn", "The next sample is due after this one.");
        }
        if (sample.results().size() > 60) {
            problems.put("results", "At most 60 results fit into one sample.");
        }
        for (WaterCare.Result result : sample.results()) {
            if (result.parameter().isBlank() || result.value().isBlank()) {
                problems.putIfAbsent(
                        "results",
                        "Each result is a parameter, its value and its unit: \u201c%s\u201d lacks one."
                                .formatted(result.line()));
            }
            length(problems, "results", result.parameter(), 100);
            length(problems, "results", result.value(), 60);
            length(problems, "results", result.unit(), 30);
        }
        return problems;
    }

    /** The problems of a hygiene record by field. */
    public static Map<String, String> broken(WaterCare.Hygiene hygiene) {
        Map<String, String> problems = new LinkedHashMap<>();
        length(problems, "product", hygiene.product(), LINE);
        length(problems, "strength", hygiene.strength(), LINE);
        length(problems, "flushed", hygiene.flushed(), LINE);
        length(problems, "cleaned", hygiene.cleaned(), LINE);
        Integer minutes = hygiene.contactMinutes();
        if (minutes != null && (minutes < 0 || minutes > 100_000)) {
            problems.put("contactMinutes", "Give the contact time in minutes, from 0 to 100 000.");
        }
        if (hygiene.product() == null
                && Stream.of(hygiene.strength(), hygiene.contactMinutes(), hygiene.flushed())
                        .anyMatch(Objects::nonNull)) {
            problems.put("product", "Say with which product it was disinfected.");
        }
        length(problems, "notIsolated", hygiene.notIsolated(), LINE);
        if (hygiene.product() != null && !hygiene.isolated() && hygiene.notIsolated() == null) {
            problems.put(
                    "isolated",
                    "Disinfect only downstream of the isolated pump: tick that it was isolated, or say why it was not.");
        }
        return problems;
    }

    private static void length(Map<String, String> problems, String field, @Nullable String text, int most) {
        if (text != null && text.length() > most) {
            problems.putIfAbsent(field, "This text is too long: at most %,d characters.".formatted(most));
        }
    }
}
