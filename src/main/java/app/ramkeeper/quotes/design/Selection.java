package app.ramkeeper.quotes.design;

import java.util.List;
import java.util.UUID;

/**
 * What a design is made of, by the ids of catalogue and price list.
 *
 * @param pumps side by side
 * @param delivery pipe by stretch, from the pump on
 */
public record Selection(UUID pumpModelId, int pumps, UUID drivePipeId, List<Part> delivery) {

    /** A stretch of the delivery line, up to a chainage. */
    public record Part(UUID pipeId, double toM) {}

    /** Keeps its own copy. */
    public Selection {
        delivery = List.copyOf(delivery);
    }

    /** The same as the end of an address. */
    public String query() {
        StringBuilder query = new StringBuilder("pump=" + pumpModelId + "&pumps=" + pumps + "&drive=" + drivePipeId);
        for (int i = 0; i < delivery.size(); i++) {
            Part part = delivery.get(i);
            query.append("&to" + i + "=" + part.toM()).append("&pipe" + i + "=" + part.pipeId());
        }
        return query.toString();
    }
}
