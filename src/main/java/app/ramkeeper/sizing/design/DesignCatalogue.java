package app.ramkeeper.sizing.design;

import app.ramkeeper.sizing.quantity.ImpossibleInput;
import java.util.List;

/**
 * What a design may be made of.
 *
 * @param pumps models with prices, at least one
 * @param drivePipes with prices, at least one
 * @param deliveryPipes with prices, 1 to 100
 */
public record DesignCatalogue(List<PricedPump> pumps, List<PricedPipe> drivePipes, List<PricedPipe> deliveryPipes) {

    private static final int MOST_PIPES = 100;

    /** Refuses empty lists and more than 100 delivery pipes. */
    public DesignCatalogue {
        pumps = some("pumps", pumps);
        drivePipes = some("drive pipes", drivePipes);
        deliveryPipes = some("delivery pipes", deliveryPipes);
        if (deliveryPipes.size() > MOST_PIPES) {
            throw new ImpossibleInput("delivery pipes", deliveryPipes.size(), "at most " + MOST_PIPES);
        }
    }

    private static <T> List<T> some(String what, List<T> list) {
        if (list.isEmpty()) {
            throw new ImpossibleInput(what, "none", "at least one");
        }
        return List.copyOf(list);
    }
}
