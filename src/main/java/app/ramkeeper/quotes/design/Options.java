package app.ramkeeper.quotes.design;

import app.ramkeeper.quotes.survey.Survey;
import app.ramkeeper.sizing.design.Rejection;
import java.util.List;
import java.util.Optional;

/**
 * What the search found for a survey.
 *
 * @param worked three to five designs if there are so many, cheapest first
 * @param rejected the other pump models, each with its reason
 * @param whyNot if there is no design: why, in sentences, the weightiest first
 * @param wouldDo what would make it possible, if anything would
 */
public record Options(
        Survey survey, List<Worked> worked, List<Rejection> rejected, List<String> whyNot, List<String> wouldDo) {

    /** Keeps its own copies. */
    public Options {
        worked = List.copyOf(worked);
        rejected = List.copyOf(rejected);
        whyNot = List.copyOf(whyNot);
        wouldDo = List.copyOf(wouldDo);
    }

    /** Whether a ram pump can do it at all. */
    public boolean feasible() {
        return !worked.isEmpty();
    }

    /** The cheapest that promises what is wanted; where none does, the one that promises most. */
    public Optional<Worked> first() {
        return worked.stream()
                .filter(this::promises)
                .findFirst()
                .or(() -> worked.stream().reduce((a, b) -> a.p10() >= b.p10() ? a : b));
    }

    /** Whether a design's promise of the dry month covers what is wanted. */
    public boolean promises(Worked one) {
        return one.p10() >= survey.demand().litresPerDay();
    }
}
