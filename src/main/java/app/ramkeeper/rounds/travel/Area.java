package app.ramkeeper.rounds.travel;

import app.ramkeeper.fleet.Position;
import java.util.UUID;

/** A part of the map with roads of its own kind. */
public record Area(
        UUID id,
        String name,
        double south,
        double west,
        double north,
        double east,
        double roadFactor,
        double speedKmH,
        int version) {

    boolean holds(Position place) {
        return place.latitude() >= south
                && place.latitude() <= north
                && place.longitude() >= west
                && place.longitude() <= east;
    }

    double area() {
        return (north - south) * (east - west);
    }
}
