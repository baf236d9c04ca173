package app.ramkeeper.demo;

import app.ramkeeper.shared.Uuids;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;

/** The invented price list of {@code db/demo/prices.csv} and what the invented pumps deliver. */
final class DemoPrices {

    private static final double[] FALLS = {1, 1.5, 2, 3, 4, 6, 8, 12};
    private static final double[] LIFTS = {6, 10, 15, 20, 30, 40, 60, 80, 100, 130};

    private final DemoRows rows;

    DemoPrices(DemoRows rows, DemoCompany company, LocalDate today) {
        this.rows = rows;
        company.models.forEach(this::performance);
        Map<String, DemoCompany.Model> models =
                company.models.stream().collect(Collectors.toMap(DemoCompany.Model::name, Function.identity()));
        try (Reader text = new InputStreamReader(
                Objects.requireNonNull(DemoPrices.class.getResourceAsStream("/db/demo/prices.csv")),
                StandardCharsets.UTF_8)) {
            for (CSVRecord line : CSVFormat.RFC4180
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get()
                    .parse(text)) {
                thing(line, models.get(line.get("model")), today);
            }
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    static void write(DemoRows rows, DemoCompany company, LocalDate today, JdbcTemplate jdbc) {
        new DemoPrices(rows, company, today);
        rows.write(jdbc);
    }

    /**
     * An even table: efficiency falls from 0.72 with the ratio of lift to fall and is best in the middle of the drive flow.
     */
    private void performance(DemoCompany.Model model) {
        for (double fall : FALLS) {
            for (double lift : LIFTS) {
                if (lift < 2 * fall || lift > model.liftMax()) {
                    continue;
                }
                for (double share : new double[] {0, 0.4, 0.7, 1}) {
                    double drive = model.flowMin() + share * (model.flowMax() - model.flowMin());
                    double efficiency = (0.74 - 0.011 * lift / fall) * (1 - 0.12 * (share - 0.5) * (share - 0.5));
                    double delivered = Math.max(0.05, efficiency) * drive * fall / lift;
                    rows.add(
                            "pump_model_performance (model_id, fall_m, lift_m, drive_flow_l_min, delivered_l_min)",
                            model.id(),
                            fall,
                            lift,
                            Math.round(drive * 10) / 10.0,
                            Math.floor(delivered * 1000) / 1000);
                }
            }
        }
    }

    private void thing(CSVRecord line, DemoCompany.@Nullable Model model, LocalDate today) {
        UUID id = Uuids.next();
        rows.add(
                "priced_things (id, code, kind, name, unit, model_id, pipe_use, material, series, outside_mm, wall_mm,"
                        + " class_bar, sold_in_m, litres, rating_bar, drinking_water_fit)",
                id,
                line.get("code"),
                line.get("kind"),
                line.get("name").replace(';', ','),
                line.get("unit"),
                model == null ? null : model.id(),
                text(line, "use"),
                text(line, "material"),
                text(line, "series"),
                number(line, "outside_mm"),
                number(line, "wall_mm"),
                number(line, "class_bar"),
                number(line, "sold_in_m"),
                number(line, "litres"),
                number(line, "rating_bar"),
                line.get("drinking_water").equals("yes"));
        BigDecimal price = Objects.requireNonNull(number(line, "price"));
        BigDecimal cost = number(line, "cost");
        boolean rises = line.get("kind").equals("PIPE");
        LocalDate raised = today.withDayOfYear(1);
        if (rises) {
            price(id, today.minusYears(3), raised.minusDays(1), price.multiply(new BigDecimal("0.95")), cost);
        }
        price(id, rises ? raised : today.minusYears(3), null, price, cost);
    }

    private void price(
            UUID thing, LocalDate from, @Nullable LocalDate until, BigDecimal price, @Nullable BigDecimal cost) {
        rows.add(
                "prices (id, thing_id, from_date, until_date, price, cost)",
                Uuids.next(),
                thing,
                from,
                until,
                price,
                cost);
    }

    private static @Nullable String text(CSVRecord line, String column) {
        String text = line.get(column);
        return text.isEmpty() ? null : text;
    }

    private static @Nullable BigDecimal number(CSVRecord line, String column) {
        String text = text(line, column);
        return text == null ? null : new BigDecimal(text);
    }
}
