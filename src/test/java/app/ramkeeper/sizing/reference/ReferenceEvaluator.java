package app.ramkeeper.sizing.reference;

/** Computes a row's quantity with the library, in the row's unit. */
@FunctionalInterface
interface ReferenceEvaluator {

    double evaluate(ReferenceCase row);

    /** For a row whose formula an evaluator does not know. */
    static IllegalArgumentException unknown(ReferenceCase row) {
        return new IllegalArgumentException("No evaluation for " + row);
    }
}
