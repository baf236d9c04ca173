package app.ramkeeper.rounds.web;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.week.DayTimes;
import app.ramkeeper.rounds.week.TechDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A round drawn to scale: start, stops, end, north up. No map from outside is asked for. */
public record Sketch(double width, double height, String line, List<Spot> spots, double scaleLength, String scaleText) {

    /** A place of the drawing. */
    public record Spot(double x, double y, String label, String name, boolean start) {}

    private static final double WIDTH = 640;
    private static final double MARGIN = 50;

    static @Nullable Sketch of(TechDay round, DayTimes times) {
        List<Position> places = new ArrayList<>();
        List<String> names = new ArrayList<>();
        if (round.start() == null || times.lines().isEmpty()) {
            return null;
        }
        places.add(round.start());
        names.add("start");
        times.lines().forEach(line -> {
            Position where = line.stop().where();
            if (where != null) {
                places.add(where);
                names.add(line.stop().site());
            }
        });
        return draw(places, names, round.end());
    }

    private static Sketch draw(List<Position> places, List<String> names, @Nullable Position end) {
        double south = places.stream().mapToDouble(Position::latitude).min().orElse(0);
        double north = places.stream().mapToDouble(Position::latitude).max().orElse(0);
        double west = places.stream().mapToDouble(Position::longitude).min().orElse(0);
        double east = places.stream().mapToDouble(Position::longitude).max().orElse(0);
        double kmEast = 111.32 * Math.cos(Math.toRadians((south + north) / 2));
        double spanKm = Math.max(2, Math.max((east - west) * kmEast, (north - south) * 110.57));
        double scale = (WIDTH - 2 * MARGIN) / spanKm;
        double height = Math.max(160, (north - south) * 110.57 * scale + 2 * MARGIN);
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            Position p = places.get(i);
            spots.add(new Spot(
                    round(MARGIN + (p.longitude() - west) * kmEast * scale),
                    round(MARGIN + (north - p.latitude()) * 110.57 * scale),
                    i == 0 ? "" : Integer.toString(i),
                    names.get(i),
                    i == 0));
        }
        String line = spots.stream().map(s -> s.x() + "," + s.y()).collect(Collectors.joining(" "));
        if (end != null && end.equals(places.get(0))) {
            line += " " + spots.get(0).x() + "," + spots.get(0).y();
        }
        double km = spanKm > 40 ? 20 : spanKm > 15 ? 5 : 1;
        return new Sketch(
                WIDTH, round(height), line, spots, round(km * scale), String.format(Locale.ROOT, "%.0f km", km));
    }

    private static double round(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
