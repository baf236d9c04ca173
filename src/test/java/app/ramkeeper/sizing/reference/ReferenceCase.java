package app.ramkeeper.sizing.reference;

import java.util.LinkedHashMap;
import java.util.Map;

/** One row of the reference table. */
record ReferenceCase(
        String id,
        String topic,
        Map<String, String> inputs,
        String quantity,
        double expected,
        String unit,
        String tolerance,
        String source,
        String provenance) {

    static Map<String, String> parse(String inputs) {
        Map<String, String> parsed = new LinkedHashMap<>();
        for (String pair : inputs.split(";")) {
            int equals = pair.indexOf('=');
            if (equals < 0) {
                throw new IllegalArgumentException("No = in input '" + pair + "' of '" + inputs + "'");
            }
            parsed.put(
                    pair.substring(0, equals).strip(),
                    pair.substring(equals + 1).strip());
        }
        return parsed;
    }

    boolean has(String key) {
        return inputs.containsKey(key);
    }

    String text(String key) {
        String value = inputs.get(key);
        if (value == null) {
            throw new IllegalArgumentException(id + " has no input " + key + ": " + inputs);
        }
        return value;
    }

    /** The number of an input, whatever unit its name carries. */
    double number(String key) {
        return Double.parseDouble(text(key));
    }

    /** The formula or rule the row asks for, empty if it leaves the choice. */
    String formula() {
        return inputs.getOrDefault("eq", inputs.getOrDefault("rule", inputs.getOrDefault("lookup", "")));
    }

    @Override
    public String toString() {
        return "%s %s %s = %s %s (%s) [%s: %s] %s"
                .formatted(id, topic, quantity, expected, unit, tolerance, provenance, source, inputs);
    }
}
