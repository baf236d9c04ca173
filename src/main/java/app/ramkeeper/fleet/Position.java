package app.ramkeeper.fleet;

import jakarta.persistence.Embeddable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A place on the earth in decimal degrees (WGS 84), north and east positive.
 *
 * @throws IllegalArgumentException outside the globe
 */
@Embeddable
public record Position(double latitude, double longitude) {

    private static final double EARTH_RADIUS_KM = 6371.0088;

    public Position {
        if (!(Math.abs(latitude) <= 90)) {
            throw new IllegalArgumentException("A latitude lies between -90 and 90 degrees.");
        }
        if (!(Math.abs(longitude) <= 180)) {
            throw new IllegalArgumentException("A longitude lies between -180 and 180 degrees.");
        }
    }

    /** True if the same numbers the other way round are a place at all. */
    public boolean canSwap() {
        return Math.abs(longitude) <= 90;
    }

    /** The same numbers the other way round. */
    public Position swapped() {
        return new Position(longitude, latitude);
    }

    /** The places that a slip would have made of this one: numbers swapped, a sign lost, or both. */
    public List<Position> slips() {
        List<Position> slips = new ArrayList<>(List.of(
                new Position(-latitude, longitude),
                new Position(latitude, -longitude),
                new Position(-latitude, -longitude)));
        if (canSwap()) {
            slips.add(0, swapped());
            slips.add(new Position(-longitude, latitude));
            slips.add(new Position(longitude, -latitude));
            slips.add(new Position(-longitude, -latitude));
        }
        return slips;
    }

    /** Great-circle distance on the mean sphere (haversine formula; within 0.6 % of the ellipsoid). */
    public double kilometresTo(Position other) {
        double dLat = Math.toRadians(other.latitude - latitude);
        double dLon = Math.toRadians(other.longitude - longitude);
        double h = Math.pow(Math.sin(dLat / 2), 2)
                + Math.cos(Math.toRadians(latitude))
                        * Math.cos(Math.toRadians(other.latitude))
                        * Math.pow(Math.sin(dLon / 2), 2);
        return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(h)));
    }

    /** Initial bearing of the great circle to another place, in degrees from north, 0 to 360. */
    public double bearingTo(Position other) {
        double dLon = Math.toRadians(other.longitude - longitude);
        double from = Math.toRadians(latitude);
        double to = Math.toRadians(other.latitude);
        double y = Math.sin(dLon) * Math.cos(to);
        double x = Math.cos(from) * Math.sin(to) - Math.sin(from) * Math.cos(to) * Math.cos(dLon);
        return (Math.toDegrees(Math.atan2(y, x)) + 360) % 360;
    }

    /** Decimal degrees with six places (0.1 m), as they can be typed again: "-45.031162, 168.662644". */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.6f, %.6f", latitude, longitude);
    }
}
