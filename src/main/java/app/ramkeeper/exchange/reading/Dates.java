package app.ramkeeper.exchange.reading;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads dates as offices write them: ISO, numbers with slashes, dots or dashes, or with the month's English name. */
public final class Dates {

    private static final Pattern YEAR_FIRST =
            Pattern.compile("(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})(?:[t ]\\d{1,2}:\\d{2}(?::\\d{2}(?:\\.\\d+)?)?z?)?");
    private static final Pattern YEAR_LAST =
            Pattern.compile("(\\d{1,2})([-/. ])(\\d{1,2})\\2(\\d{4}|\\d{2})(?: \\d{1,2}:\\d{2}(?::\\d{2})?)?");
    private static final Pattern DAY_NAMED =
            Pattern.compile("(\\d{1,2})(?:st|nd|rd|th)?[ .-]*([a-z]{3,9})[ .,-]*(\\d{4}|\\d{2})");
    private static final Pattern NAMED_DAY =
            Pattern.compile("([a-z]{3,9})[ .]*(\\d{1,2})(?:st|nd|rd|th)?[ ,]+(\\d{4})");
    private static final List<String> MONTHS = List.of(
            "january",
            "february",
            "march",
            "april",
            "may",
            "june",
            "july",
            "august",
            "september",
            "october",
            "november",
            "december");

    private Dates() {}

    /** Reads a date; empty if the text is none, or a day that does not exist. */
    public static Optional<LocalDate> read(String text, DateOrder order, LocalDate today) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        Matcher iso = YEAR_FIRST.matcher(plain);
        if (iso.matches()) {
            return date(number(iso, 1), number(iso, 2), number(iso, 3));
        }
        Matcher numbers = YEAR_LAST.matcher(plain);
        if (numbers.matches()) {
            int year = year(numbers.group(4), today);
            boolean dayFirst = order == DateOrder.DAY_FIRST || numbers.group(2).equals(".");
            return date(year, number(numbers, dayFirst ? 3 : 1), number(numbers, dayFirst ? 1 : 3));
        }
        Matcher dayNamed = DAY_NAMED.matcher(plain);
        if (dayNamed.matches()) {
            return date(year(dayNamed.group(3), today), month(dayNamed.group(2)), number(dayNamed, 1));
        }
        Matcher namedDay = NAMED_DAY.matcher(plain);
        return namedDay.matches()
                ? date(number(namedDay, 3), month(namedDay.group(1)), number(namedDay, 2))
                : Optional.empty();
    }

    /** The two numbers whose order is in question, for {@link Evidence}; dots are always day first. */
    static Optional<int[]> openOrder(String text) {
        Matcher numbers = YEAR_LAST.matcher(text);
        return numbers.matches() && !numbers.group(2).equals(".")
                ? Optional.of(new int[] {number(numbers, 1), number(numbers, 3)})
                : Optional.empty();
    }

    private static int number(Matcher matcher, int group) {
        return Integer.parseInt(matcher.group(group));
    }

    /** Two digits mean the latest such year that is at most next year. */
    private static int year(String digits, LocalDate today) {
        int year = Integer.parseInt(digits);
        if (digits.length() == 4) {
            return year;
        }
        int century = (today.getYear() + 1) / 100 * 100;
        return century + year <= today.getYear() + 1 ? century + year : century + year - 100;
    }

    private static int month(String name) {
        for (int m = 0; m < MONTHS.size(); m++) {
            if (MONTHS.get(m).startsWith(name) || (m == 8 && name.equals("sept"))) {
                return m + 1;
            }
        }
        return 0;
    }

    private static Optional<LocalDate> date(int year, int month, int day) {
        try {
            return Optional.of(LocalDate.of(year, month, day));
        } catch (DateTimeException none) {
            return Optional.empty();
        }
    }
}
