package app.ramkeeper.quotes.offer;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.quotes.price.QuoteSettings.TaxRounding;
import app.ramkeeper.shared.Uuids;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Money of quotes against tables worked by hand. The rule is the one of {@link Reckoning}: to the cent, half up, first each
 * line, then the quote's discount on each line, then tax by line or once a rate.
 */
class ReckoningTests {

    /** Worked by hand: quantity x price less the line's discount, half a cent upwards. */
    @ParameterizedTest
    @CsvSource({
        // quantity, price, line discount %, amount     // exact product
        "1,      10.00, 0,    10.00", //                    10.00
        "3,      0.335, 0,    1.01", //                     1.005 -> half up
        "3,      0.3349, 0,   1.00", //                     1.0047
        "620,    2.05,  0,    1271.00",
        "651,    2.05,  10,   1201.10", //                  1201.095 -> half up
        "0.5,    0.01,  0,    0.01", //                     0.005 -> half up
        "0.499,  0.01,  0,    0.00", //                     0.00499
        "6.5,    620,   2.5,  3929.25",
        "1,      99.99, 100,  0.00",
        "7,      1.2345, 0,   8.64" //                      8.6415
    })
    void amountOfALine(BigDecimal quantity, BigDecimal price, BigDecimal discount, BigDecimal amount) {
        assertThat(Reckoning.amount(line(quantity, price, discount, "15"))).isEqualByComparingTo(amount);
    }

    /**
     * Worked by hand for 15 %. Lines as amounts. By LINE each line's tax is rounded before it is summed, by TOTAL the sum of
     * the bases is taxed once, so three lines of 0.10 pay 3 x 0.02 (0.015 half up) or 0.045 -> 0.05.
     */
    @ParameterizedTest
    @CsvSource({
        // amounts,             discount %, rounding, net,    tax,   total
        "0.10 0.10 0.10,        0,  LINE,  0.30,   0.06,   0.36",
        "0.10 0.10 0.10,        0,  TOTAL, 0.30,   0.05,   0.35",
        "33.33 33.33 33.34,     0,  LINE,  100.00, 15.00,  115.00", // 4.9995 4.9995 5.001 -> 5.00 each
        "33.33 33.33 33.34,     0,  TOTAL, 100.00, 15.00,  115.00",
        "0.03 0.03 0.03 0.03,   0,  LINE,  0.12,   0.00,   0.12", // 0.0045 -> 0.00 each
        "0.03 0.03 0.03 0.03,   0,  TOTAL, 0.12,   0.02,   0.14", // 0.018 -> 0.02
        "100.00 50.05,          10, LINE,  135.05, 20.26,  155.31", // 90.00, 45.045 -> 45.05; 13.50, 6.7575 -> 6.76
        "100.00 50.05,          10, TOTAL, 135.05, 20.26,  155.31", // 20.2575 -> 20.26
        "19.99 19.99 19.99,     5,  LINE,  56.97,  8.55,   65.52", // 18.9905 -> 18.99; 2.8485 -> 2.85
        "19.99 19.99 19.99,     5,  TOTAL, 56.97,  8.55,   65.52" // 8.5455 -> 8.55
    })
    void totalsOfOneRate(
            String amounts,
            BigDecimal discount,
            TaxRounding rounding,
            BigDecimal net,
            BigDecimal tax,
            BigDecimal total) {
        List<QuoteLine> lines = Arrays.stream(amounts.split(" "))
                .map(amount -> line(BigDecimal.ONE, new BigDecimal(amount), BigDecimal.ZERO, "15"))
                .toList();

        Reckoning.Totals totals = Reckoning.totals(lines, List.of(less(null, discount, null)), rounding);

        assertThat(totals.net()).isEqualByComparingTo(net);
        assertThat(totals.tax()).isEqualByComparingTo(tax);
        assertThat(totals.total()).isEqualByComparingTo(total);
        assertThat(totals.listed().subtract(taken(totals))).isEqualByComparingTo(net);
    }

    /** Worked by hand: 2 x 0.35 at 15 % and 0.70 + 0.35 at 12.5 %, by TOTAL: 0.105 -> 0.11 and 0.13125 -> 0.13. */
    @ParameterizedTest
    @CsvSource({"TOTAL, 0.11, 0.13", "LINE, 0.10, 0.13"})
    void eachRateIsRoundedByItself(TaxRounding rounding, BigDecimal first, BigDecimal second) {
        List<QuoteLine> lines = Stream.of("0.35 15", "0.35 15", "0.70 12.5", "0.35 12.500")
                .map(each -> each.split(" "))
                .map(each -> line(BigDecimal.ONE, new BigDecimal(each[0]), BigDecimal.ZERO, each[1]))
                .toList();

        List<Reckoning.Tax> taxes = Reckoning.totals(lines, List.of(), rounding).taxes();

        assertThat(taxes)
                .extracting(tax -> tax.amount().toPlainString())
                .containsExactly(first.toPlainString(), second.toPlainString());
    }

    /**
     * Worked by hand. Lines: pumps 100.00 and 50.05 at 15 %, labour 33.33 at 10 %; tax by TOTAL. Discounts of groups come before
     * those of the whole; an amount is spread in whole cents by what the lines come to, what is left over goes where most was cut
     * off.
     */
    @ParameterizedTest
    @CsvSource({
        // discounts,                taken,        net,    tax,   total
        // 90.00, 45.045 -> 45.05, 29.997 -> 30.00; 135.05 x 15 % = 20.2575, 30.00 x 10 % = 3.00
        "whole 10%,                  18.33,        165.05, 23.26, 188.31",
        // of 183.38: 10.906 5.459 3.635 -> 10.90 5.45 3.63 and two cents: 10.91 5.46 3.63; 133.68 -> 20.052, 29.70 ->
        // 2.97
        "whole 20.00,                20.00,        163.38, 23.02, 186.40",
        // 95.00, 47.5475 -> 47.55; 142.55 -> 21.3825, 33.33 -> 3.333
        "PUMPS 5%,                   7.50,         175.88, 24.71, 200.59",
        // 30.00 -> 3.00; 150.05 -> 22.5075
        "LABOUR 3.33,                3.33,         180.05, 25.51, 205.56",
        // of 95.00 47.55 33.33 = 175.88: 5.401 2.704 1.895 -> 5.40 2.70 1.89 and a cent: 1.90; 134.45 -> 20.1675, 31.43
        // -> 3.143
        "whole 10.00 + PUMPS 5%,     7.50 + 10.00, 165.88, 23.31, 189.19",
        // never more than there is
        "LABOUR 40.00,               33.33,        150.05, 22.51, 172.56",
    })
    void discountsOfGroupsAndTheWhole(
            String discounts, String taken, BigDecimal net, BigDecimal tax, BigDecimal total) {
        List<QuoteLine> lines = List.of(
                line(LineGroup.PUMPS, "100.00", "15"),
                line(LineGroup.PUMPS, "50.05", "15"),
                line(LineGroup.LABOUR, "33.33", "10"));
        List<Discount> less = Arrays.stream(discounts.split(" \\+ "))
                .map(ReckoningTests::typed)
                .toList();

        Reckoning.Totals totals = Reckoning.totals(lines, less, TaxRounding.TOTAL);

        assertThat(totals.discounts())
                .extracting(each -> each.amount().toPlainString())
                .containsExactly(taken.split(" \\+ "));
        assertThat(totals.net()).isEqualByComparingTo(net);
        assertThat(totals.tax()).isEqualByComparingTo(tax);
        assertThat(totals.total()).isEqualByComparingTo(total);
    }

    private static Discount typed(String words) {
        String[] parts = words.split(" ");
        LineGroup group = parts[0].equals("whole") ? null : LineGroup.valueOf(parts[0]);
        boolean share = parts[1].endsWith("%");
        BigDecimal number = new BigDecimal(parts[1].replace("%", ""));
        return less(group, share ? number : null, share ? null : number);
    }

    private static QuoteLine line(LineGroup group, String amount, String tax) {
        return line(group, BigDecimal.ONE, new BigDecimal(amount), BigDecimal.ZERO, tax);
    }

    @Property(tries = 300)
    void partsAlwaysAddUpToTheWhole(
            @ForAll @Size(min = 1, max = 12) List<@BigRange(min = "0", max = "99999") @Scale(4) BigDecimal> prices,
            @ForAll @IntRange(max = 100) int percent,
            @ForAll @BigRange(min = "0", max = "999999") @Scale(2) BigDecimal off,
            @ForAll TaxRounding rounding) {
        List<QuoteLine> lines = prices.stream()
                .map(price -> line(new BigDecimal("1.333"), price, BigDecimal.ZERO, "15"))
                .toList();

        Reckoning.Totals totals = Reckoning.totals(
                lines, List.of(less(null, BigDecimal.valueOf(percent), null), less(null, null, off)), rounding);

        assertThat(totals.net().add(totals.tax())).isEqualByComparingTo(totals.total());
        assertThat(totals.net().add(taken(totals))).isEqualByComparingTo(totals.listed());
        assertThat(totals.total().scale()).isEqualTo(2);
        assertThat(totals.net()).isNotNegative();
        // each line may differ by half a cent from the exact tax
        assertThat(totals.tax()
                        .subtract(totals.net().multiply(new BigDecimal("0.15")))
                        .abs())
                .isLessThanOrEqualTo(new BigDecimal("0.005").multiply(BigDecimal.valueOf(lines.size())));
    }

    private static QuoteLine line(BigDecimal quantity, BigDecimal price, BigDecimal discount, String tax) {
        return line(LineGroup.OTHER, quantity, price, discount, tax);
    }

    private static QuoteLine line(
            LineGroup group, BigDecimal quantity, BigDecimal price, BigDecimal discount, String tax) {
        return new QuoteLine(
                Uuids.next(),
                group,
                "line",
                null,
                quantity,
                "piece",
                price,
                null,
                discount,
                "Tax",
                new BigDecimal(tax),
                null,
                true,
                0);
    }

    private static Discount less(@Nullable LineGroup group, @Nullable BigDecimal percent, @Nullable BigDecimal amount) {
        return new Discount(Uuids.next(), group, percent, amount, null);
    }

    private static BigDecimal taken(Reckoning.Totals totals) {
        return totals.discounts().stream().map(Reckoning.Taken::amount).reduce(BigDecimal.ZERO, BigDecimal::add);
    }
}
