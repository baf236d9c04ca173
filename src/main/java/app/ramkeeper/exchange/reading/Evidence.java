package app.ramkeeper.exchange.reading;

import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What the cells of a file give away about the order of its dates and its decimal mark. */
public final class Evidence {

    private static final Pattern SURE_COMMA =
            Pattern.compile("[-−]?\\d+,(?:\\d{1,2}|\\d{4,})|[-−]?\\d{1,3}(?:\\.\\d{3})+,\\d+");
    private static final Pattern SURE_POINT =
            Pattern.compile("[-−]?\\d+\\.(?:\\d{1,2}|\\d{4,})|[-−]?\\d{1,3}(?:,\\d{3})+\\.\\d+");
    private static final Pattern EITHER = Pattern.compile("[-−]?\\d{1,3}[.,]\\d{3}");

    private boolean dayFirst;
    private boolean monthFirst;
    private @Nullable String openDate;
    private boolean comma;
    private boolean point;
    private @Nullable String openNumber;

    /** Looks at one cell. */
    public void see(String cell) {
        if (cell.isEmpty() || cell.length() > 20) {
            return;
        }
        char first = cell.charAt(0);
        if ((first < '0' || first > '9') && first != '-' && first != '−') {
            return;
        }
        Dates.openOrder(cell).ifPresent(numbers -> seeDate(cell, numbers));
        comma |= SURE_COMMA.matcher(cell).matches();
        point |= SURE_POINT.matcher(cell).matches();
        if (openNumber == null && EITHER.matcher(cell).matches()) {
            openNumber = cell;
        }
    }

    private void seeDate(String cell, int[] numbers) {
        dayFirst |= numbers[0] > 12;
        monthFirst |= numbers[1] > 12;
        if (openDate == null && numbers[0] <= 12 && numbers[1] <= 12 && numbers[0] != numbers[1]) {
            openDate = cell;
        }
    }

    /** The order that the dates themselves show; empty if they show none, or both. */
    public Optional<DateOrder> order() {
        if (dayFirst == monthFirst) {
            return Optional.empty();
        }
        return Optional.of(dayFirst ? DateOrder.DAY_FIRST : DateOrder.MONTH_FIRST);
    }

    /** A date that can be read in two ways, if the file holds one and nothing tells which is meant. */
    public Optional<String> ambiguousDate() {
        return order().isPresent() ? Optional.empty() : Optional.ofNullable(openDate);
    }

    /** True if numbers are written with a decimal comma. */
    public boolean decimalComma() {
        return comma && !point;
    }

    /** A number such as 1,250 that can be read in two ways, if nothing tells which is meant. */
    public Optional<String> ambiguousNumber() {
        return comma != point ? Optional.empty() : Optional.ofNullable(openNumber);
    }
}
