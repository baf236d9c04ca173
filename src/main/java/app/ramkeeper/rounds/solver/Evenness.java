package app.ramkeeper.rounds.solver;

/**
 * Hours that are to be shared out evenly: each group of rounds, such as a technician's days, has a share of its available time
 * in use, and the plan costs the price times the sum of the squared distances of these shares from their mean. How much is done
 * in all costs nothing here.
 *
 * @param groupOf the group of each round
 * @param busy time of each group that is spent outside the problem's rounds
 * @param available time of each group in all; above 0
 * @param price cost of a squared distance of 1; 0 for none
 */
public record Evenness(int[] groupOf, double[] busy, double[] available, double price) {

    /** Nobody minds who does how much. */
    static Evenness none(int rounds) {
        return new Evenness(new int[rounds], new double[1], new double[] {1}, 0);
    }
}
