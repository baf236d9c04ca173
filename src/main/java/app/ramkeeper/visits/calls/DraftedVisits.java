package app.ramkeeper.visits.calls;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Tells a call where its visit stands in a week that is not published yet. The plan of the week, a module above, implements it. */
public interface DraftedVisits {

    /**
     * A visit's place in the plan of a week.
     *
     * @param on the day of the round it stands in; null while it stands in none
     */
    record Drafted(
            LocalDate monday,
            UUID stop,
            @Nullable LocalDate on,
            @Nullable String who) {}

    /** The visit's place in this week or a later one, a round before none. */
    Optional<Drafted> of(UUID visit);
}
