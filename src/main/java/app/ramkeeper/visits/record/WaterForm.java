package app.ramkeeper.visits.record;

import app.ramkeeper.shared.Text;
import app.ramkeeper.visits.WaterCare;
import app.ramkeeper.visits.WaterRules;
import app.ramkeeper.visits.form.TypedForm;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Between the form of a water record and the record. */
final class WaterForm {

    private WaterForm() {}

    static final List<String> FIELDS = List.of(
            "reference", "place", "takenOn", "takenTime", "takenBy", "laboratory", "results", "remark", "nextOn");

    static TypedForm of(WaterCare.Sample sample) {
        return new TypedForm()
                .set("reference", sample.reference())
                .set("place", sample.place())
                .set("takenOn", sample.takenOn())
                .set("takenTime", sample.takenTime())
                .set("takenBy", sample.takenBy())
                .set("laboratory", sample.laboratory())
                .set("remark", sample.remark())
                .set("nextOn", sample.nextOn())
                .set(
                        "results",
                        sample.results().stream().map(WaterCare.Result::line).collect(Collectors.joining("\n")));
    }

    /** The sample as typed; null if there is none, and problems are noted in the form. */
    static WaterCare.@Nullable Sample sample(TypedForm form, LocalDate visit, boolean required) {
        if (!required
                && FIELDS.stream()
                        .filter(f -> !f.equals("takenOn"))
                        .allMatch(f -> form.value(f).isEmpty())) {
            return null;
        }
        LocalDate on = form.date("takenOn");
        WaterCare.Sample sample = new WaterCare.Sample(
                form.text("reference"),
                form.text("place"),
                on == null ? visit : on,
                form.time("takenTime"),
                form.text("takenBy"),
                form.text("laboratory"),
                form.text("remark"),
                form.date("nextOn"),
                results(form.value("results")));
        WaterRules.broken(sample).forEach(form::problem);
        return sample;
    }

    /** One result a line: parameter; value; unit. */
    static List<WaterCare.Result> results(String lines) {
        List<WaterCare.Result> results = new ArrayList<>();
        lines.lines().filter(line -> !line.isBlank()).forEach(line -> {
            String[] parts = line.split(";", 3);
            String unit = parts.length < 3 ? "" : parts[2].strip();
            results.add(new WaterCare.Result(
                    Objects.requireNonNullElse(Text.clean(parts[0]), ""),
                    parts.length < 2 ? "" : parts[1].strip(),
                    unit.isEmpty() ? null : unit));
        });
        return results;
    }

    static WaterCare.@Nullable Hygiene hygiene(TypedForm form) {
        if (Stream.of("product", "strength", "contactMinutes", "flushed", "notIsolated", "cleaned")
                .allMatch(name -> form.value(name).isEmpty())) {
            return null;
        }
        WaterCare.Hygiene hygiene = new WaterCare.Hygiene(
                form.text("product"),
                form.text("strength"),
                minutes(form),
                form.text("flushed"),
                form.ticked("isolated"),
                form.ticked("isolated") ? null : form.text("notIsolated"),
                form.text("cleaned"));
        WaterRules.broken(hygiene).forEach(form::problem);
        return hygiene;
    }

    private static @Nullable Integer minutes(TypedForm form) {
        BigDecimal minutes = form.number("contactMinutes");
        if (minutes != null && (minutes.stripTrailingZeros().scale() > 0 || minutes.precision() > 6)) {
            form.problem("contactMinutes", "Give the contact time in whole minutes.");
            return null;
        }
        return minutes == null ? null : minutes.intValueExact();
    }
}
