package app.ramkeeper.sizing.reference;

import java.util.Map;

/** Evaluators of the source topics. */
final class SourceReferenceCases {

    private SourceReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of();
    }
}
