package app.ramkeeper.visits.plan;

import app.ramkeeper.visits.VisitState;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Which visits the list shows; all parts stand in the address. */
public record VisitFilter(
        @Nullable LocalDate from,
        @Nullable LocalDate to,
        @Nullable UUID person,
        @Nullable UUID depot,
        @Nullable VisitState state) {

    boolean isEmpty() {
        return from == null && to == null && person == null && depot == null && state == null;
    }

    /** What is still to be done. */
    static VisitFilter planned() {
        return new VisitFilter(null, null, null, null, VisitState.PLANNED);
    }
}
