package app.ramkeeper.sizing.reference;

import java.util.Map;

/** Evaluators of the vessel topics. */
final class VesselReferenceCases {

    private VesselReferenceCases() {}

    static Map<String, ReferenceEvaluator> evaluators() {
        return Map.of();
    }
}
