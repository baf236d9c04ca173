package app.ramkeeper.quotes.offer;

import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.design.ChosenDesign.PipeLine;
import app.ramkeeper.quotes.price.PipeUse;
import app.ramkeeper.quotes.price.PriceKind;
import app.ramkeeper.quotes.price.PricedPipeRow;
import app.ramkeeper.quotes.price.PricedThing;
import app.ramkeeper.quotes.price.Prices;
import app.ramkeeper.quotes.price.QuoteSettings;
import app.ramkeeper.shared.Uuids;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * The lines that a design asks for, at the prices of a day. What has no price stays on the list without one.
 *
 * <p>Common practice, no source: one strainer a drive pipe, one of each valve of the price list, a tank for a day's demand,
 * two people. The office changes what does not fit.
 */
final class BillOfMaterials {

    private static final int PEOPLE = 2;

    private final Prices prices;
    private final LocalDate day;
    private final QuoteSettings settings;
    private final PricedThing tax;
    private final List<QuoteLine> lines = new ArrayList<>();

    private BillOfMaterials(Prices prices, LocalDate day, PricedThing tax) {
        this.prices = prices;
        this.day = day;
        this.settings = prices.settings();
        this.tax = tax;
    }

    /**
     * Lists all lines.
     *
     * @param kilometres from the depot and back; null where the way is not known
     */
    static List<QuoteLine> of(
            ChosenDesign design, Prices prices, LocalDate day, PricedThing tax, @Nullable Double kilometres) {
        BillOfMaterials bill = new BillOfMaterials(prices, day, tax);
        bill.pumps(design);
        bill.pipes(design);
        bill.fixtures(design);
        bill.work(design, kilometres);
        return List.copyOf(bill.lines);
    }

    private void pumps(ChosenDesign design) {
        BigDecimal number = BigDecimal.valueOf(design.pumps());
        add(
                LineGroup.PUMPS,
                prices.ofModel(PriceKind.PUMP, design.pumpModelId(), day),
                "Ram pump " + design.pumpName(),
                null,
                number,
                "piece");
        add(
                LineGroup.PUMPS,
                prices.ofModel(PriceKind.FITTINGS_KIT, design.pumpModelId(), day),
                "Fittings kit " + design.pumpName(),
                "one for each pump",
                number,
                "piece");
        List<PricedThing> strainers = prices.of(PriceKind.STRAINER, day);
        add(LineGroup.PUMPS, first(strainers), "Intake strainer", "one for each drive pipe", number, "piece");
    }

    private void pipes(ChosenDesign design) {
        pipe(
                LineGroup.DRIVE_PIPE,
                design.drive(),
                design.drive().lengthM() * design.pumps(),
                design.pumps() + " x " + metres(design.drive().lengthM()),
                PipeUse.DRIVE);
        Map<String, PipeLine> kinds = new LinkedHashMap<>();
        Map<String, Double> lengths = new LinkedHashMap<>();
        for (PipeLine stretch : design.delivery()) {
            String key = stretch.pricedPipeId() == null
                    ? stretch.name()
                    : stretch.pricedPipeId().toString();
            kinds.putIfAbsent(key, stretch);
            lengths.merge(key, stretch.lengthM(), Double::sum);
        }
        kinds.forEach((key, stretch) -> {
            double length = Objects.requireNonNull(lengths.get(key));
            pipe(LineGroup.DELIVERY_PIPE, stretch, length, metres(length), PipeUse.DELIVERY);
        });
    }

    /** Length with the allowance for off-cuts, in whole stock lengths or coils where it is sold so, else whole metres. */
    private void pipe(LineGroup group, PipeLine line, double lengthM, String how, PipeUse use) {
        Optional<PricedPipeRow> row = prices.pipes(day, use).stream()
                .filter(each -> each.id().equals(line.pricedPipeId()))
                .findFirst();
        BigDecimal needed = BigDecimal.valueOf(lengthM)
                .setScale(3, RoundingMode.HALF_UP)
                .multiply(BigDecimal.valueOf(100).add(settings.offCutPercent()))
                .movePointLeft(2);
        BigDecimal step = row.map(PricedPipeRow::soldInM).orElse(BigDecimal.ONE);
        BigDecimal quantity = needed.divide(step, 0, RoundingMode.CEILING).multiply(step);
        String note =
                how + " and " + settings.offCutPercent().stripTrailingZeros().toPlainString()
                        + " % for off-cuts"
                        + row.map(PricedPipeRow::soldInM)
                                .map(sold -> ", in lengths of "
                                        + sold.stripTrailingZeros().toPlainString() + " m")
                                .orElse("");
        line(
                group,
                row.map(PricedPipeRow::name).orElse(line.name()),
                note,
                quantity,
                "m",
                row.map(PricedPipeRow::price).orElse(null),
                row.map(PricedPipeRow::cost).orElse(null),
                row.map(PricedPipeRow::id).orElse(null));
    }

    private void fixtures(ChosenDesign design) {
        ChosenDesign.Vessel asked = design.vessel();
        Optional<PricedThing> vessel = prices.of(PriceKind.VESSEL, day).stream()
                .filter(each -> each.litres() != null
                        && each.litres().doubleValue() >= asked.litres()
                        && each.ratingBar() != null
                        && each.ratingBar().doubleValue() >= asked.ratingBar())
                .findFirst();
        add(
                LineGroup.VESSEL,
                vessel,
                "Pressure vessel of at least %.0f l, %.0f bar"
                        .formatted(Math.ceil(asked.litres()), Math.ceil(asked.ratingBar())),
                "pre-charge %.1f bar; one for each pump".formatted(asked.preChargeBar()),
                BigDecimal.valueOf(design.pumps()),
                "piece");
        for (PricedThing valve : prices.of(PriceKind.VALVE, day)) {
            add(LineGroup.VALVES, Optional.of(valve), valve.name(), null, BigDecimal.ONE, valve.unit());
        }
        List<PricedThing> tanks = prices.of(PriceKind.TANK, day);
        Optional<PricedThing> tank = tanks.stream()
                .filter(each -> each.litres() != null && each.litres().doubleValue() >= design.demandLDay())
                .findFirst();
        add(
                LineGroup.TANK,
                tank,
                "Tank of at least %.0f l".formatted(Math.ceil(design.demandLDay())),
                "for one day's demand",
                BigDecimal.ONE,
                "piece");
    }

    private void work(ChosenDesign design, @Nullable Double kilometres) {
        double laid = design.drive().lengthM() * design.pumps()
                + design.delivery().stream().mapToDouble(PipeLine::lengthM).sum();
        BigDecimal halfDays = settings.labourDays()
                .add(BigDecimal.valueOf(laid).divide(settings.metresADay(), 6, RoundingMode.HALF_UP))
                .multiply(BigDecimal.valueOf(2))
                .setScale(0, RoundingMode.CEILING);
        BigDecimal days = halfDays.divide(BigDecimal.valueOf(2));
        add(
                LineGroup.LABOUR,
                first(prices.of(PriceKind.LABOUR, day)),
                "Labour",
                PEOPLE + " people for " + days.stripTrailingZeros().toPlainString() + " days, " + metres(laid)
                        + " of pipe",
                days.multiply(BigDecimal.valueOf(PEOPLE)),
                "day");
        if (kilometres != null) {
            BigDecimal trips = days.setScale(0, RoundingMode.CEILING);
            add(
                    LineGroup.TRAVEL,
                    first(prices.of(PriceKind.TRAVEL, day)),
                    "Travel",
                    trips + " trips of %.0f km there and back, estimated from the map".formatted(kilometres),
                    trips.multiply(BigDecimal.valueOf(kilometres).setScale(0, RoundingMode.HALF_UP)),
                    "km");
        }
    }

    private void add(
            LineGroup group,
            Optional<PricedThing> thing,
            String otherwise,
            @Nullable String note,
            BigDecimal quantity,
            String unit) {
        line(
                group,
                thing.map(PricedThing::name).orElse(otherwise),
                note,
                quantity,
                thing.map(PricedThing::unit).orElse(unit),
                thing.map(PricedThing::price).orElse(null),
                thing.map(PricedThing::cost).orElse(null),
                thing.map(PricedThing::id).orElse(null));
    }

    private void line(
            LineGroup group,
            String text,
            @Nullable String note,
            BigDecimal quantity,
            String unit,
            @Nullable BigDecimal price,
            @Nullable BigDecimal cost,
            @Nullable UUID thing) {
        lines.add(new QuoteLine(
                Uuids.next(),
                group,
                text,
                note,
                quantity,
                unit,
                price,
                cost,
                BigDecimal.ZERO,
                tax.name(),
                tax.price(),
                thing,
                false,
                0));
    }

    private static Optional<PricedThing> first(List<PricedThing> things) {
        return things.stream().findFirst();
    }

    private static String metres(double length) {
        return "%.0f m".formatted(length);
    }
}
