package app.ramkeeper.exchange;

import java.util.Map;

/** How many rows of an import stand in which state. */
public record Counts(Map<RowState, Integer> byState) {

    public int of(String state) {
        return byState.getOrDefault(RowState.valueOf(state), 0);
    }

    public int total() {
        return byState.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** How many rows the present step has to do, and how many of them are done. */
    public int stepDone(ImportState state) {
        return switch (state) {
            case CHECKING -> total() - of("NEW");
            case APPLYING -> of("APPLIED");
            case UNDOING -> of("UNDONE");
            default -> total();
        };
    }

    public int stepTotal(ImportState state) {
        return switch (state) {
            case APPLYING -> of("APPLIED") + of("READY");
            case UNDOING -> of("APPLIED") + of("UNDONE");
            default -> total();
        };
    }
}
