package app.ramkeeper.sizing.design;

import java.util.Arrays;

/**
 * Which pipe in which stretch makes a line cheapest for each head at the pump, at one flow.
 *
 * <p>The line ends free at the last level. Going back from there, the head line rises by each stretch's friction and never
 * lies below the ground. A pipe may stand in a stretch only if neither end of it sees more than the pipe's rating, with
 * the water running and with the line at rest, full and shut: under the standing lift or, where the pump may beat on
 * against it, under the dead head. Friction of each stretch and
 * the heights of high points are counted in whole steps, rounded UP, so a plan never needs more head than it says; with
 * m stretches it may be dearer than the best for the same head, but never dearer than the best for a head (m + 1) steps
 * lower. For the rounded problem the dynamic programme is exact: it keeps the least cost for each height of the head
 * line and each pipe.
 */
final class StretchProblem {

    /** Least cost by head steps above the outlet's level at the pump, and the choices that make it. */
    static final class Plan {
        private final double[][] cost;
        private final byte[][][] pipeAfter;
        private final short[][][] from;
        private final double step;

        private Plan(double[][] cost, byte[][][] pipeAfter, short[][][] from, double step) {
            this.cost = cost;
            this.pipeAfter = pipeAfter;
            this.from = from;
            this.step = step;
        }

        /** Least cost with the head line at the pump at most this far above the outlet; infinite if there is none. */
        double cost(double headM) {
            int best = best(headM);
            return best < 0 ? Double.POSITIVE_INFINITY : cost[best % cost.length][best / cost.length];
        }

        /** The pipe of each stretch, from the pump on. */
        int[] pipes(double headM) {
            int best = best(headM);
            int pipe = best % cost.length;
            int state = best / cost.length;
            int[] pipes = new int[from.length];
            for (int j = 0; j < pipes.length; j++) {
                pipes[j] = pipe;
                int before = from[j][pipe][state];
                pipe = pipeAfter[j][pipe][state];
                state = before;
            }
            return pipes;
        }

        /** Cheapest state and pipe as one number, -1 if there is none. */
        private int best(double headM) {
            int most = Math.min(cost[0].length - 1, (int) Math.floor(headM / step + 1e-9));
            int best = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int state = 0; state <= most; state++) {
                for (int pipe = 0; pipe < cost.length; pipe++) {
                    if (cost[pipe][state] < least) {
                        least = cost[pipe][state];
                        best = state * cost.length + pipe;
                    }
                }
            }
            return best;
        }
    }

    final double[] lengths;
    final double[] levels;
    final double[] prices;
    final double[] ratingsM;
    /** Level of the head line with the delivery shut. */
    final double shutLevel;

    /** Price of each change from one pipe to another. */
    final double joint;

    final double step;

    /**
     * States the problem.
     *
     * @param lengths of the stretches from the pump on, m
     * @param levels at their ends, one more than stretches, m
     * @param prices per metre of each pipe
     * @param ratingsM what each pipe bears, m of head
     * @param shutLevel level of the head line with the delivery shut
     * @param joint price of each change from one pipe to another, 0 or more
     * @param step of the head, m
     */
    StretchProblem(
            double[] lengths,
            double[] levels,
            double[] prices,
            double[] ratingsM,
            double shutLevel,
            double joint,
            double step) {
        this.lengths = lengths;
        this.levels = levels;
        this.prices = prices;
        this.ratingsM = ratingsM;
        this.shutLevel = shutLevel;
        this.joint = joint;
        this.step = step;
    }

    /** Steps that a height above the outlet counts. */
    int steps(double height) {
        return (int) Math.ceil(height / step - 1e-9);
    }

    /**
     * Solves for all heads at once.
     *
     * @param gradients head each pipe takes per metre at the flow; infinite for one that must not be used
     * @param mostHead greatest head line at the pump above the outlet, m
     */
    Plan solve(double[] gradients, double mostHead) {
        int stretches = lengths.length;
        int pipes = prices.length;
        int states = Math.min(Short.MAX_VALUE, Math.max(1, (int) Math.floor(mostHead / step + 1e-9) + 1));
        double outlet = levels[stretches];
        double[][] cost = new double[pipes][states];
        for (double[] row : cost) {
            Arrays.fill(row, Double.POSITIVE_INFINITY);
            row[0] = 0;
        }
        byte[][][] pipeAfter = new byte[stretches][pipes][states];
        short[][][] from = new short[stretches][pipes][states];
        for (int j = stretches - 1; j >= 0; j--) {
            int ground = Math.max(0, steps(levels[j] - outlet));
            byte[] cheapest = cheapestPipes(cost);
            double[][] next = new double[pipes][states];
            for (int p = 0; p < pipes; p++) {
                Arrays.fill(next[p], Double.POSITIVE_INFINITY);
                if (gradients[p] < Double.POSITIVE_INFINITY) {
                    int rise = steps(gradients[p] * lengths[j]);
                    extend(j, p, ground, rise, cost, cheapest, next[p], pipeAfter[j][p], from[j][p]);
                }
            }
            cost = next;
        }
        return new Plan(cost, pipeAfter, from, step);
    }

    private static byte[] cheapestPipes(double[][] cost) {
        byte[] cheapest = new byte[cost[0].length];
        for (int state = 0; state < cheapest.length; state++) {
            for (int p = 1; p < cost.length; p++) {
                if (cost[p][state] < cost[cheapest[state]][state]) {
                    cheapest[state] = (byte) p;
                }
            }
        }
        return cheapest;
    }

    private void extend(
            int j,
            int pipe,
            int ground,
            int rise,
            double[][] cost,
            byte[] cheapest,
            double[] next,
            byte[] pipeAfter,
            short[] from) {
        if (shutLevel - Math.min(levels[j], levels[j + 1]) > ratingsM[pipe] + 1e-9) {
            return;
        }
        double price = prices[pipe] * lengths[j];
        double bearable = ratingsM[pipe] + 1e-9 - levels[levels.length - 1];
        int mostEnd = (int) Math.min(next.length - 1, Math.floor((bearable + levels[j + 1]) / step + 1e-9));
        int mostStart = (int) Math.min(next.length - 1, Math.floor((bearable + levels[j]) / step + 1e-9));
        for (int end = 0; end <= mostEnd; end++) {
            int start = Math.max(ground, end + rise);
            if (start > mostStart) {
                break;
            }
            double same = cost[pipe][end];
            double changed = cost[cheapest[end]][end] + joint;
            double total = Math.min(same, changed) + price;
            if (total < next[start]) {
                next[start] = total;
                pipeAfter[start] = same <= changed ? (byte) pipe : cheapest[end];
                from[start] = (short) end;
            }
        }
    }
}
