package app.ramkeeper.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The one place that rounds money: to the cent, half up. Templates call it as {@code ${@money.of(x)}}. */
@Component("money")
public class Money {

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

    /** A quantity or percentage without trailing zeros. */
    public String count(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
    }
}
