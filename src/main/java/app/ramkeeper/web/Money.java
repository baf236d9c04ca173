package app.ramkeeper.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The one place that rounds money: to the cent, half up. Templates call it as {@code ${@money.of(x)}}. */
@Component("money")
public class Money {

    private static final Set<String> COUNTED =
            Set.of("day", "hour", "piece", "set", "coil", "roll", "length", "bag", "load");

    /** To the cent, half a cent away from zero. */
    public static BigDecimal cents(BigDecimal amount) {
        return amount.setScale(2, RoundingMode.HALF_UP);
    }

    /** "1 234.50", minus for what is taken off. */
    public String of(@Nullable BigDecimal amount) {
        return amount == null
                ? "–"
                : String.format(Locale.ROOT, "%,.2f", cents(amount))
                        .replace(',', '\u00A0')
                        .replace("-", "−");
    }

    /** A unit price: cents, or more decimals where it has them. */
    public String plain(BigDecimal amount) {
        BigDecimal stripped = amount.stripTrailingZeros();
        return stripped.scale() <= 2 ? of(amount) : stripped.toPlainString();
    }

    /** "12 days", "1 piece", "18 m": words that are counted take their plural, signs of units do not. */
    public String count(BigDecimal number, String unit) {
        boolean many = number.abs().compareTo(BigDecimal.ONE) != 0 && COUNTED.contains(unit);
        return count(number) + "\u00A0" + unit + (many ? "s" : "");
    }

    /** A quantity or percentage without trailing zeros. */
    public String count(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
    }
}
