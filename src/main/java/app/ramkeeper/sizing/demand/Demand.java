package app.ramkeeper.sizing.demand;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Volume;
import java.util.List;

/**
 * All that wants water at a site.
 *
 * @param heads people and stock
 * @param irrigation land
 */
public record Demand(List<Heads> heads, List<Irrigation> irrigation) {

    /** So many of one kind. */
    public record Heads(DemandRate rate, double count) {

        /** Refuses a count below zero. */
        public Heads {
            Require.notNegative("number of " + rate.kind(), count, "");
        }

        /** Litres a day of all of them. Worked value: 1200 for 300 sheep at 4 l. */
        public double litresPerDay() {
            return rate.litresPerDay() * count;
        }
    }

    /** Keeps its own copies. */
    public Demand {
        heads = List.copyOf(heads);
        irrigation = List.copyOf(irrigation);
    }

    /** People and stock only. Worked value: 300 sheep at 4 l are 1200 l/day. */
    public static Demand of(Heads... heads) {
        return new Demand(List.of(heads), List.of());
    }

    /** Mean flow over the day. Worked value: 60 people at 40 l are 2400 l/day, 1.667 l/min. */
    public Flow daily() {
        double litres = heads.stream().mapToDouble(Heads::litresPerDay).sum()
                + irrigation.stream().mapToDouble(Irrigation::litresPerDay).sum();
        return Flow.ofLitresPerDay(litres);
    }

    /** Flow in the busiest hour of a pattern of use. Worked value: 6 times the mean for a quarter of the day's water. */
    public Flow peakHour(DayPattern pattern) {
        return daily().times(24 * pattern.busiest());
    }

    /** Storage that lasts so many days with no supply. Worked value: 7.2 m3 for 2400 l/day and 3 days. */
    public Volume storageForDays(double days) {
        return Volume.ofLitres(daily().litresPerDay() * Require.notNegative("days of storage", days, "days"));
    }
}
