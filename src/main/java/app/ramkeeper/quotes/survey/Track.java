package app.ramkeeper.quotes.survey;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.sizing.line.GroundPoint;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Length;
import io.jenetics.jpx.WayPoint;
import io.jenetics.jpx.geom.Geoid;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** A track walked along the route with a phone, as a GPX file (the open exchange format for tracks, version 1.1 or 1.0). */
final class Track {

    private static final int MOST_BYTES = 5_000_000;
    private static final double SHORTEST_STEP_M = 1;

    private Track() {}

    /** A profile from the pump on, and where the pump stands. */
    record Walked(List<GroundPoint> profile, Position pump) {}

    /**
     * The profile along a track: chainage on the ellipsoid, level as the phone recorded it.
     *
     * @param fromTank whether it was walked from the tank to the pump
     * @throws ProfileText.Unreadable if it is no such file or has no levels
     */
    static Walked read(byte[] file, boolean fromTank) throws ProfileText.Unreadable {
        if (file.length > MOST_BYTES) {
            throw new ProfileText.Unreadable("This file is larger than 5 MB. Send the one track along the route.");
        }
        // A document type may name outside files; GPX has none.
        if (new String(file, StandardCharsets.ISO_8859_1).contains("<!DOCTYPE")) {
            throw new ProfileText.Unreadable("This is no plain GPX file: it holds a document type.");
        }
        List<WayPoint> points = new ArrayList<>(points(file));
        if (fromTank) {
            Collections.reverse(points);
        }
        List<GroundPoint> profile = new ArrayList<>();
        double chainage = 0;
        for (int i = 0; i < points.size(); i++) {
            WayPoint point = points.get(i);
            Optional<Length> level = point.getElevation();
            if (level.isEmpty()) {
                throw new ProfileText.Unreadable(
                        "Point %d of the track has no level. Record it with levels, or type the profile."
                                .formatted(i + 1));
            }
            double step =
                    i == 0 ? 0 : Geoid.WGS84.distance(points.get(i - 1), point).doubleValue();
            chainage += step;
            boolean stands = !profile.isEmpty()
                    && chainage - profile.get(profile.size() - 1).chainageM() < SHORTEST_STEP_M;
            if (!stands) {
                profile.add(new GroundPoint(chainage, level.get().doubleValue()));
            }
        }
        if (profile.size() < 2) {
            throw new ProfileText.Unreadable("There is no track of two points or more in this file.");
        }
        WayPoint pump = points.get(0);
        return new Walked(
                Thinning.to(profile, ProfileText.MOST_POINTS / 3),
                new Position(
                        pump.getLatitude().doubleValue(), pump.getLongitude().doubleValue()));
    }

    private static List<WayPoint> points(byte[] file) throws ProfileText.Unreadable {
        try {
            GPX gpx = GPX.Reader.of(GPX.Reader.Mode.LENIENT).read(new ByteArrayInputStream(file));
            List<WayPoint> track = gpx.tracks()
                    .flatMap(t -> t.segments())
                    .flatMap(s -> s.points())
                    .toList();
            return track.isEmpty()
                    ? gpx.routes().flatMap(route -> route.points()).toList()
                    : track;
        } catch (IOException | RuntimeException unreadable) {
            throw new ProfileText.Unreadable(
                    "This file cannot be read as GPX. Export the track as GPX, or type the profile.");
        }
    }
}
