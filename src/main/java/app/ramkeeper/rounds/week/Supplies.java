package app.ramkeeper.rounds.week;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Which parts the visits need and where they lie. A part that nobody ever counted is taken to be there. */
public final class Supplies {

    /** So many of a part for one visit. */
    public record Need(UUID stopId, UUID partId, String part, double quantity) {}

    /** So many of a part in a van or a depot; the owner is the person or the depot. */
    public record OnHand(UUID ownerId, UUID partId, double quantity) {}

    private final Map<UUID, List<Need>> needs;
    private final Map<UUID, Map<UUID, Double>> onHand = new HashMap<>();
    private final Set<UUID> counted;

    Supplies(Map<UUID, List<Need>> needs, List<OnHand> levels) {
        this.needs = needs;
        this.counted = levels.stream().map(OnHand::partId).collect(Collectors.toSet());
        levels.forEach(l ->
                onHand.computeIfAbsent(l.ownerId(), o -> new HashMap<>()).merge(l.partId(), l.quantity(), Double::sum));
    }

    /** The first part that neither van nor depot has enough of for this visit alone; null if none is short. */
    @Nullable
    String shortFor(UUID stop, UUID person, @Nullable UUID depot) {
        return needs.getOrDefault(stop, List.of()).stream()
                .filter(need -> counted.contains(need.partId()))
                .filter(need -> has(person, need) + (depot == null ? 0 : has(depot, need)) < need.quantity() - 1e-9)
                .map(Need::part)
                .findFirst()
                .orElse(null);
    }

    private double has(UUID owner, Need need) {
        return onHand.getOrDefault(owner, Map.of()).getOrDefault(need.partId(), 0.0);
    }
}
