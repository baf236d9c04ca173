package app.ramkeeper.web;

import java.util.List;

/**
 * A finished drawing: two axes, lines and points, in units of the SVG's view box.
 *
 * @param title what it shows, for those who do not see it
 * @param width width of the view box
 * @param height height of the view box
 * @param x axis along the bottom
 * @param y axis up the left side
 * @param xLabel what the bottom axis counts, with its unit
 * @param yLabel what the side axis counts, with its unit
 * @param lines paths, later ones on top
 * @param points single values
 */
public record Plot(
        String title,
        int width,
        int height,
        PlotAxis x,
        PlotAxis y,
        String xLabel,
        String yLabel,
        List<Line> lines,
        List<Point> points) {

    /** Room that is left free for labels at each side of the drawing. */
    public static final int LEFT = 56, BOTTOM = 34, TOP = 22, RIGHT = 14;

    /** A path with a CSS class of the stylesheet's plot section and the words of its legend. */
    public record Line(String style, String path, String label) {}

    /** A value with the words that a pointer or reader gets. */
    public record Point(double x, double y, String style, String label) {}

    /** The path through points in their order. */
    public static String path(List<double[]> points) {
        StringBuilder path = new StringBuilder();
        for (double[] point : points) {
            path.append(path.isEmpty() ? "M" : "L").append(point[0]).append(' ').append(point[1]);
        }
        return path.toString();
    }
}
