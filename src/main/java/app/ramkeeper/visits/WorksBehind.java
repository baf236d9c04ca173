package app.ramkeeper.visits;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Tells what works a visit belongs to, and whether they may go on. Who keeps the works, a module above, implements it. */
public interface WorksBehind {

    /**
     * The works behind one visit.
     *
     * @param of their name in words, such as "quote 2026-0014, Pump for the top block"
     * @param held why nothing may be done for now; null if it may
     * @param first the visit that must come on an earlier day; null if there is none, or if it is over
     * @param firstOn the day that one is planned for
     * @param pickList the page that says what to take along
     */
    record Works(
            UUID visit,
            String of,
            @Nullable String held,
            @Nullable UUID first,
            @Nullable LocalDate firstOn,
            String pickList) {}

    /** The works of those of the visits that belong to any. */
    List<Works> of(Collection<UUID> visits);
}
