package app.ramkeeper.upkeep;

import java.util.UUID;

/** How many tasks of a kind are overdue, and whose it is. */
public record OverdueCount(
        UUID kindId, String kindName, boolean watched, long ours, long cannotReach, long refused, long parts) {

    public long all() {
        return ours + cannotReach + refused + parts;
    }
}
