package app.ramkeeper.quotes.offer;

import app.ramkeeper.quotes.price.QuoteSettings.TaxRounding;
import app.ramkeeper.web.Money;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Adds up a quote. Every amount is rounded to the cent, half up, in this order and nowhere else.
 *
 * <ol>
 *   <li>amount of a line = quantity x price x (1 - its discount), rounded
 *   <li>base of a line = amount x (1 - the quote's discount), rounded; net = sum of the bases
 *   <li>tax by LINE: base x rate, rounded for each line, then summed; by TOTAL: sum of the bases of one rate x rate, rounded once
 *   <li>total = net + tax
 * </ol>
 */
public final class Reckoning {

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    /** Tax of one rate. */
    public record Tax(String name, BigDecimal percent, BigDecimal base, BigDecimal amount) {}

    /**
     * A quote added up.
     *
     * @param listed sum of the lines before the quote's discount
     * @param discount what the quote's discount takes off
     */
    public record Totals(
            BigDecimal listed,
            BigDecimal discount,
            BigDecimal net,
            List<Tax> taxes,
            BigDecimal tax,
            BigDecimal total) {}

    private Reckoning() {}

    /** What a line comes to without tax, its own discount taken off; nothing while it has no price. */
    public static BigDecimal amount(QuoteLine line) {
        BigDecimal price = line.price() == null ? BigDecimal.ZERO : line.price();
        return Money.cents(less(line.quantity().multiply(price), line.discountPercent()));
    }

    /** What the things of a line cost the company. */
    public static BigDecimal cost(QuoteLine line) {
        return line.cost() == null
                ? Money.cents(BigDecimal.ZERO)
                : Money.cents(line.quantity().multiply(line.cost()));
    }

    /** Adds up lines under the quote's discount. */
    public static Totals totals(List<QuoteLine> lines, BigDecimal discountPercent, TaxRounding rounding) {
        BigDecimal listed = Money.cents(BigDecimal.ZERO);
        BigDecimal net = listed;
        Map<Rate, BigDecimal> bases = new LinkedHashMap<>();
        Map<Rate, BigDecimal> byLine = new LinkedHashMap<>();
        for (QuoteLine line : lines) {
            BigDecimal amount = amount(line);
            BigDecimal base = Money.cents(less(amount, discountPercent));
            listed = listed.add(amount);
            net = net.add(base);
            Rate rate = new Rate(line.taxName(), line.taxPercent().stripTrailingZeros());
            bases.merge(rate, base, BigDecimal::add);
            byLine.merge(rate, Money.cents(part(base, rate.percent())), BigDecimal::add);
        }
        List<Tax> taxes = new ArrayList<>();
        BigDecimal tax = Money.cents(BigDecimal.ZERO);
        for (Map.Entry<Rate, BigDecimal> each : bases.entrySet()) {
            BigDecimal amount = rounding == TaxRounding.LINE
                    ? byLine.getOrDefault(each.getKey(), BigDecimal.ZERO)
                    : Money.cents(part(each.getValue(), each.getKey().percent()));
            taxes.add(new Tax(each.getKey().name(), each.getKey().percent(), each.getValue(), amount));
            tax = tax.add(amount);
        }
        return new Totals(listed, listed.subtract(net), net, List.copyOf(taxes), tax, net.add(tax));
    }

    private static BigDecimal less(BigDecimal amount, BigDecimal percent) {
        return part(amount, HUNDRED.subtract(percent));
    }

    private static BigDecimal part(BigDecimal amount, BigDecimal percent) {
        return amount.multiply(percent).movePointLeft(2);
    }

    private record Rate(String name, BigDecimal percent) {}
}
