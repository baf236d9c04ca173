package app.ramkeeper.rounds.solver;

/** The share of its time that each group has in use, and what their unevenness costs, in constant time for each change. */
final class Shares {

    private final Evenness evenness;
    private final double[] share;
    private double sum;
    private double squares;

    Shares(Evenness evenness) {
        this.evenness = evenness;
        this.share = new double[evenness.available().length];
        for (int group = 0; group < share.length; group++) {
            change(group, evenness.busy()[group] / evenness.available()[group]);
        }
    }

    /** A round has become longer, or shorter, by so many minutes. */
    void lengthen(int round, double minutes) {
        int group = evenness.groupOf()[round];
        change(group, minutes / evenness.available()[group]);
    }

    private void change(int group, double by) {
        squares += by * (2 * share[group] + by);
        share[group] += by;
        sum += by;
    }

    /** The sum of squared distances from the mean, by its usual shortcut, at its price. */
    double cost() {
        return evenness.price() * Math.max(0, squares - sum * sum / share.length);
    }

    /** What lengthening a round by so many minutes would add to the cost. */
    double costOf(int round, double minutes) {
        int group = evenness.groupOf()[round];
        double by = minutes / evenness.available()[group];
        return evenness.price() * by * (2 * share[group] + by - (2 * sum + by) / share.length);
    }
}
