package app.ramkeeper.catalogue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.Period;

/** How often: months and days, always added to a date in one step, so that month ends do not drift. */
public record Interval(int months, int days) {

    /** A month in days where a factor leaves a part of one; the mean of the calendar is 30.4. */
    private static final BigDecimal DAYS_IN_MONTH = new BigDecimal("30.4");

    public static final Interval NONE = new Interval(0, 0);

    public Interval {
        if (months < 0 || days < 0) {
            throw new IllegalArgumentException("An interval is not negative: " + months + " months, " + days + " days");
        }
    }

    public static Interval ofMonths(int months) {
        return new Interval(months, 0);
    }

    public static Interval ofDays(int days) {
        return new Interval(0, days);
    }

    public boolean isNone() {
        return months == 0 && days == 0;
    }

    /** The day so long after another: 31 January and one month is the last of February, and two months 31 March. */
    public LocalDate after(LocalDate day) {
        return day.plus(Period.of(0, months, days));
    }

    /** The interval k times over, still to be added in one step. */
    public Interval times(int k) {
        return new Interval(Math.multiplyExact(months, k), Math.multiplyExact(days, k));
    }

    /** The interval under a factor (silty water 0.5); the part of a month left over becomes days; one day at least. */
    public Interval scaled(BigDecimal factor) {
        if (isNone() || factor.compareTo(BigDecimal.ONE) == 0) {
            return this;
        }
        BigDecimal scaledMonths = factor.multiply(BigDecimal.valueOf(months));
        int wholeMonths = scaledMonths.intValue();
        BigDecimal rest = scaledMonths
                .subtract(BigDecimal.valueOf(wholeMonths))
                .multiply(DAYS_IN_MONTH)
                .add(factor.multiply(BigDecimal.valueOf(days)));
        int restDays = rest.setScale(0, RoundingMode.HALF_UP).intValue();
        return new Interval(wholeMonths, wholeMonths == 0 ? Math.max(1, restDays) : restDays);
    }

    /** "2 years", "18 months", "10 days", "1 month 15 days". */
    public String words() {
        if (isNone()) {
            return "–";
        }
        String first = months > 0 && months % 12 == 0 ? count(months / 12, "year") : count(months, "month");
        String second = count(days, "day");
        return months == 0 ? second : days == 0 ? first : first + " " + second;
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
