package app.ramkeeper.sizing.demand;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Require;
import app.ramkeeper.sizing.quantity.Volume;
import java.util.Arrays;
import java.util.List;

/**
 * Share of a day's water used in each of its 24 hours.
 *
 * @param shares 24 of them, adding up to 1
 */
public record DayPattern(List<Double> shares) {

    /** Refuses other than 24 shares, shares below zero and a sum that is not 1. */
    public DayPattern {
        if (shares.size() != 24) {
            throw new ImpossibleInput("hourly shares", shares.size(), "24 of them");
        }
        shares.forEach(share -> Require.notNegative("hourly share", share, ""));
        double sum = shares.stream().mapToDouble(Double::doubleValue).sum();
        if (Math.abs(sum - 1) > 1e-6) {
            throw new ImpossibleInput("sum of the hourly shares", sum, "1");
        }
        shares = List.copyOf(shares);
    }

    /** The same all day. */
    public static DayPattern even() {
        return of(0, 24);
    }

    /** Evenly over some hours. Worked value: of(6, 4) uses a quarter of the day's water in each hour from 6 to 10. */
    public static DayPattern of(int firstHour, int hours) {
        Require.within("first hour", firstHour, 0, 23, "");
        Require.within("hours of use", hours, 1, 24, "");
        Double[] shares = new Double[24];
        Arrays.fill(shares, 0.0);
        for (int i = 0; i < hours; i++) {
            shares[(firstHour + i) % 24] = 1.0 / hours;
        }
        return new DayPattern(List.of(shares));
    }

    /** Share of the busiest hour. Worked value: 0.25 for of(6, 4). */
    public double busiest() {
        return shares.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    }

    /**
     * Storage that carries a steady supply over the busy hours: the sequent peak of use less supply.
     *
     * <p>Two days are run so that a night on either side counts. Source: Rippl, W. 1883, The capacity of storage reservoirs
     * for water supply, Min. Proc. Inst. Civ. Eng. 71 (mass curve); sequent peak form, Thomas, H. A. 1963. Note: supply
     * below the day's use, when no tank helps for long. Worked value: 2400 l/day used evenly in 4 hours against 100 l/h
     * wants 2 m3.
     */
    public Noted<Volume> storage(Flow dailyUse, Flow supply) {
        double use = dailyUse.litresPerDay();
        double perHour = supply.litresPerDay() / 24;
        double shortfall = 0;
        double most = 0;
        for (int hour = 0; hour < 48; hour++) {
            shortfall = Math.max(0, shortfall + use * shares.get(hour % 24) - perHour);
            most = Math.max(most, shortfall);
        }
        Volume storage = Volume.ofLitres(most);
        return supply.litresPerDay() >= use * (1 - 1e-12)
                ? Noted.of(storage)
                : Noted.of(
                        storage,
                        new Note(
                                Note.Code.CAUTION,
                                Numbers.sentence(
                                        "The supply of %.0f l/day is less than the use of %.0f: a tank only delays the shortage.",
                                        supply.litresPerDay(), use)));
    }
}
