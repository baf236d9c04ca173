package app.ramkeeper.quotes.offer;

import app.ramkeeper.quotes.price.QuoteSettings.TaxRounding;
import app.ramkeeper.web.Money;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Adds up a quote. Every amount is rounded to the cent, half up, in this order and nowhere else.
 *
 * <ol>
 *   <li>amount of a line = quantity x price x (1 - its discount), rounded
 *   <li>base of a line = amount less the quote's discounts, those of groups before those of the whole, each on what is left:
 *       a share off each line, rounded; an amount spread over the lines by what they come to, whole cents, never more than they
 *       come to; net = sum of the bases
 *   <li>tax by LINE: base x rate, rounded for each line, then summed; by TOTAL: sum of the bases of one rate x rate, rounded once
 *   <li>total = net + tax
 * </ol>
 */
public final class Reckoning {

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final BigDecimal CENT = new BigDecimal("0.01");

    /** A discount with what it takes off. */
    public record Taken(Discount discount, BigDecimal amount) {}

    /** Tax of one rate. */
    public record Tax(String name, BigDecimal percent, BigDecimal base, BigDecimal amount) {}

    /**
     * A quote added up.
     *
     * @param listed sum of the lines before the quote's discounts
     * @param discounts what each of them takes off
     */
    public record Totals(
            BigDecimal listed,
            List<Taken> discounts,
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

    /** Adds up lines under the quote's discounts. */
    public static Totals totals(List<QuoteLine> lines, List<Discount> discounts, TaxRounding rounding) {
        List<BigDecimal> bases =
                new ArrayList<>(lines.stream().map(Reckoning::amount).toList());
        BigDecimal listed = sum(bases);
        List<Taken> taken = new ArrayList<>();
        discounts.stream()
                .sorted(Comparator.comparing(discount -> discount.lineGroup() == null))
                .forEach(discount -> taken.add(new Taken(discount, take(discount, lines, bases))));
        Map<Rate, BigDecimal> byRate = new LinkedHashMap<>();
        Map<Rate, BigDecimal> byLine = new LinkedHashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            Rate rate =
                    new Rate(lines.get(i).taxName(), lines.get(i).taxPercent().stripTrailingZeros());
            byRate.merge(rate, bases.get(i), BigDecimal::add);
            byLine.merge(rate, Money.cents(part(bases.get(i), rate.percent())), BigDecimal::add);
        }
        BigDecimal net = sum(bases);
        List<Tax> taxes = new ArrayList<>();
        BigDecimal tax = Money.cents(BigDecimal.ZERO);
        for (Map.Entry<Rate, BigDecimal> each : byRate.entrySet()) {
            BigDecimal amount = rounding == TaxRounding.LINE
                    ? byLine.getOrDefault(each.getKey(), BigDecimal.ZERO)
                    : Money.cents(part(each.getValue(), each.getKey().percent()));
            taxes.add(new Tax(each.getKey().name(), each.getKey().percent(), each.getValue(), amount));
            tax = tax.add(amount);
        }
        return new Totals(listed, List.copyOf(taken), net, List.copyOf(taxes), tax, net.add(tax));
    }

    /** Takes a discount off the bases of the lines it covers; answers with what that makes. */
    private static BigDecimal take(Discount discount, List<QuoteLine> lines, List<BigDecimal> bases) {
        List<Integer> covered = IntStream.range(0, lines.size())
                .filter(i -> discount.covers(lines.get(i)))
                .boxed()
                .toList();
        BigDecimal before = sum(bases);
        if (discount.percent() != null) {
            BigDecimal percent = discount.percent();
            covered.forEach(i -> bases.set(i, Money.cents(less(bases.get(i), percent))));
        } else if (discount.amount() != null) {
            spread(discount.amount(), covered, bases);
        }
        return before.subtract(sum(bases));
    }

    /** Spreads an amount over lines by what they come to; the cents that are left go where most was cut off, the first line first. */
    private static void spread(BigDecimal amount, List<Integer> covered, List<BigDecimal> bases) {
        BigDecimal all = sum(covered.stream().map(bases::get).toList());
        BigDecimal off = amount.min(all);
        if (off.signum() == 0) {
            return;
        }
        BigDecimal left = off;
        Map<Integer, BigDecimal> cut = new LinkedHashMap<>();
        for (int i : covered) {
            BigDecimal[] cents = bases.get(i).multiply(off).movePointRight(2).divideAndRemainder(all);
            BigDecimal share = cents[0].setScale(0).movePointLeft(2);
            bases.set(i, bases.get(i).subtract(share));
            left = left.subtract(share);
            cut.put(i, cents[1]);
        }
        cut.entrySet().stream()
                .sorted(Map.Entry.<Integer, BigDecimal>comparingByValue().reversed())
                .limit(left.movePointRight(2).intValueExact())
                .forEach(each ->
                        bases.set(each.getKey(), bases.get(each.getKey()).subtract(CENT)));
    }

    private static BigDecimal sum(List<BigDecimal> amounts) {
        return amounts.stream().reduce(Money.cents(BigDecimal.ZERO), BigDecimal::add);
    }

    private static BigDecimal less(BigDecimal amount, BigDecimal percent) {
        return part(amount, HUNDRED.subtract(percent));
    }

    private static BigDecimal part(BigDecimal amount, BigDecimal percent) {
        return amount.multiply(percent).movePointLeft(2);
    }

    private record Rate(String name, BigDecimal percent) {}
}
