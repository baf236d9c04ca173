package app.ramkeeper.sizing.design;

import java.util.List;

/**
 * The designs that no other beats in both cost and delivered flow, and why the other pumps are in none.
 *
 * @param designs cheapest first; each delivers more than the one before
 * @param rejected every model without a design, in the catalogue's order
 */
public record DesignFront(List<Design> designs, List<Rejection> rejected) {

    /** Keeps its own copies. */
    public DesignFront {
        designs = List.copyOf(designs);
        rejected = List.copyOf(rejected);
    }
}
