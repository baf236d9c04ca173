package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.demand.Demand;
import app.ramkeeper.sizing.demand.DemandRate;
import app.ramkeeper.sizing.demand.DemandTable;
import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Choice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads who wants water, and how much. */
final class DemandReader {

    private static final double MOST_L_DAY = 10_000_000;

    private DemandReader() {}

    /** Kinds of the table with their rate. */
    static List<Choice> kinds() {
        return DemandTable.standard().rates().stream()
                .map(rate -> new Choice(
                        key(rate),
                        "%s, %s (%s l/day)".formatted(rate.kind(), rate.state(), plain(rate.litresPerDay()))))
                .toList();
    }

    private static String key(DemandRate rate) {
        return rate.kind() + "/" + rate.state();
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    /** The daily demand; a rate typed in a row stands in place of the table's. */
    static @Nullable Flow read(TypedForm form, List<String> assumptions) {
        Amounts amounts = new Amounts(form);
        List<Demand.Heads> heads = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (int i = 0; i < form.rows("demands", 3); i++) {
            String field = "demand[" + i + "]";
            if (form.value(field + ".count").isEmpty()
                    && form.value(field + ".kind").isEmpty()) {
                continue;
            }
            Optional<DemandRate> rate = rate(form.value(field + ".kind"));
            if (rate.isEmpty()) {
                form.problem(field + ".kind", "Choose who or what wants water.");
            }
            double count = amounts.needed(field + ".count", "how many", 0, 1_000_000, "");
            double each = amounts.or(
                    field + ".each",
                    rate.map(DemandRate::litresPerDay).orElse(0.),
                    "the litres a day each",
                    0,
                    10_000,
                    "l/day");
            rate.ifPresent(r -> {
                heads.add(new Demand.Heads(new DemandRate(r.kind(), r.state(), each, "survey"), count));
                words.add("%s %s, %s, at %s l/day".formatted(plain(count), r.kind(), r.state(), plain(each)));
            });
        }
        double more = amounts.or("demandMore", 0, "the other demand", 0, MOST_L_DAY, "l/day");
        if (more > 0) {
            words.add("%s l/day for other uses".formatted(plain(more)));
        }
        double total = Demand.of(heads.toArray(Demand.Heads[]::new)).daily().litresPerDay() + more;
        if (total <= 0) {
            form.problem("demand[0].count", "Say who wants water, and how many; or give litres a day.");
            return null;
        }
        assumptions.add("Wanted: " + String.join("; ", words) + ".");
        return Flow.ofLitresPerDay(total);
    }

    private static Optional<DemandRate> rate(String key) {
        return DemandTable.standard().rates().stream()
                .filter(rate -> key(rate).equals(key))
                .findFirst();
    }
}
