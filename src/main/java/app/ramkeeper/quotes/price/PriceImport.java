package app.ramkeeper.quotes.price;

import app.ramkeeper.identity.ForSetup;
import jakarta.validation.Validator;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.Errors;

/** Takes a whole price list in: all of it, or nothing and every line that is wrong. */
@Service
@ForSetup
@Transactional
public class PriceImport {

    /** How it ended: what was written, or what is wrong. */
    public record Outcome(int things, int prices, List<String> problems) {}

    private static final int MOST_PROBLEMS = 100;

    private final JdbcClient jdbc;
    private final PriceBook book;
    private final Validator validator;
    private final MessageSource messages;

    PriceImport(JdbcClient jdbc, PriceBook book, Validator validator, MessageSource messages) {
        this.jdbc = jdbc;
        this.book = book;
        this.validator = validator;
        this.messages = messages;
    }

    /** Adds new codes, changes known ones, and adds prices that are not there yet; one that is stays as it is. */
    public Outcome read(String text) {
        PriceCsv.Read read = PriceCsv.read(text, modelsByName());
        List<String> problems = new ArrayList<>(read.problems());
        read.rows().forEach(row -> check(row, problems));
        if (problems.isEmpty()) {
            otherKinds(read.rows(), problems);
            overlaps(read.rows(), problems);
        }
        if (!problems.isEmpty()) {
            return new Outcome(0, 0, problems.stream().limit(MOST_PROBLEMS).toList());
        }
        Map<String, UUID> written = new HashMap<>();
        int prices = 0;
        for (PriceCsv.Row row : read.rows()) {
            String code = folded(row.thing().code());
            UUID id = written.get(code);
            if (id == null) {
                id = write(row.thing());
                written.put(code, id);
            }
            if (row.price() != null && isNew(id, row.price())) {
                book.addPeriod(id, row.price());
                prices++;
            }
        }
        return new Outcome(written.size(), prices, List.of());
    }

    private void check(PriceCsv.Row row, List<String> problems) {
        Errors errors = new BeanPropertyBindingResult(row.thing(), "thing");
        row.thing().check(errors);
        errors.getAllErrors()
                .forEach(error -> problems.add("Line " + row.line() + ": "
                        + messages.getMessage(String.valueOf(error.getCode()), null, Locale.UK)));
        Stream.of(row.thing(), row.price())
                .filter(java.util.Objects::nonNull)
                .flatMap(bean -> validator.validate(bean).stream())
                .forEach(wrong -> problems.add(
                        "Line " + row.line() + ", " + wrong.getPropertyPath() + ": " + wrong.getMessage()));
        if (row.price() != null) {
            Errors dates = new BeanPropertyBindingResult(row.price(), "price");
            row.price().check(dates);
            dates.getAllErrors()
                    .forEach(error -> problems.add("Line " + row.line() + ": "
                            + messages.getMessage(String.valueOf(error.getCode()), null, Locale.UK)));
        }
    }

    /** Known codes that the file gives another kind: what hangs on the kind would be left over. */
    private void otherKinds(List<PriceCsv.Row> rows, List<String> problems) {
        Map<String, String> kinds = new HashMap<>();
        jdbc.sql("select code, kind from priced_things").query(row -> {
            kinds.put(folded(row.getString("code")), row.getString("kind"));
        });
        for (PriceCsv.Row row : rows) {
            String kind = String.valueOf(row.thing().kind());
            String known = kinds.putIfAbsent(folded(row.thing().code()), kind);
            if (known != null && !known.equals(kind)) {
                problems.add("Line " + row.line() + ": the code " + row.thing().code() + " is a " + known + ", not a "
                        + kind + ".");
            }
        }
    }

    /** Prices of one code whose days overlap, in the file or with what is there. */
    private void overlaps(List<PriceCsv.Row> rows, List<String> problems) {
        Map<String, List<PeriodForm>> seen = new HashMap<>();
        for (PriceCsv.Row row : rows) {
            if (row.price() == null) {
                continue;
            }
            String code = folded(row.thing().code());
            List<PeriodForm> others = seen.computeIfAbsent(code, this::present);
            if (others.stream().anyMatch(other -> !same(other, row.price()) && clash(other, row.price()))) {
                problems.add("Line " + row.line() + ": this code has another price on some of these days.");
            }
            others.add(row.price());
        }
    }

    private List<PeriodForm> present(String code) {
        return new ArrayList<>(jdbc.sql("select p.from_date, p.until_date, p.price, p.cost from prices p"
                        + " join priced_things t on t.id = p.thing_id where folded(t.code) = folded(?)")
                .param(code)
                .query(PeriodForm.class)
                .list());
    }

    private static boolean same(PeriodForm a, PeriodForm b) {
        return java.util.Objects.equals(a.fromDate(), b.fromDate());
    }

    /** An open price ends by itself where a later one begins. */
    private static boolean clash(PeriodForm a, PeriodForm b) {
        LocalDate fromA = java.util.Objects.requireNonNull(a.fromDate());
        LocalDate fromB = java.util.Objects.requireNonNull(b.fromDate());
        PeriodForm first = fromA.isBefore(fromB) ? a : b;
        LocalDate later = fromA.isBefore(fromB) ? fromB : fromA;
        return first.untilDate() != null && !first.untilDate().isBefore(later);
    }

    private UUID write(ThingForm thing) {
        Optional<UUID> known = jdbc.sql("select id from priced_things where folded(code) = folded(?)")
                .param(thing.code())
                .query(UUID.class)
                .optional();
        if (known.isEmpty()) {
            return book.add(thing);
        }
        ThingForm saved = book.form(known.get());
        if (!thing.withVersion(saved.version()).equals(saved)) {
            book.change(known.get(), thing.withVersion(saved.version()));
        }
        return known.get();
    }

    private boolean isNew(UUID thing, PeriodForm price) {
        return jdbc.sql("select count(*) = 0 from prices where thing_id = ? and from_date = ?")
                .params(thing, java.util.Objects.requireNonNull(price.fromDate()))
                .query(Boolean.class)
                .single();
    }

    private Map<String, UUID> modelsByName() {
        Map<String, UUID> models = new HashMap<>();
        jdbc.sql("select id, name from pump_models").query(row -> {
            models.put(folded(row.getString("name")), row.getObject("id", UUID.class));
        });
        return models;
    }

    private static String folded(@Nullable String text) {
        return text == null ? "" : text.toLowerCase(Locale.ROOT);
    }

    /** The whole price list, a line for each thing and price. */
    @Transactional(readOnly = true)
    public List<List<@Nullable Object>> table() {
        return jdbc.sql("""
                        select t.code, t.kind, t.name, t.unit, m.name as model, t.pipe_use, t.material, t.series, t.outside_mm,
                               t.wall_mm, t.class_bar, t.sold_in_m, t.litres, t.rating_bar,
                               case when t.drinking_water_fit then 'yes' else 'no' end as drinking_water,
                               p.from_date, p.until_date, p.price, p.cost
                        from priced_things t left join pump_models m on m.id = t.model_id left join prices p on p.thing_id = t.id
                        order by t.kind, t.code, p.from_date""")
                .query((row, number) -> {
                    List<@Nullable Object> cells = new ArrayList<>();
                    for (int i = 1; i <= PriceCsv.HEADER.size(); i++) {
                        cells.add(row.getObject(i));
                    }
                    return cells;
                })
                .list();
    }
}
