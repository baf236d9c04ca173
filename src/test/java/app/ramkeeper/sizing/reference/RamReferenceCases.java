package app.ramkeeper.sizing.reference;

import java.util.Map;

/** Evaluators of the ram topics. */
final class RamReferenceCases {

    private RamReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of();
    }
}
