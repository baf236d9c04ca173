package app.ramkeeper.quotes.survey;

import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.visits.form.TypedForm;
import java.math.BigDecimal;

/** Reads numbers of a typed form that must lie between two limits; what does not is noted beside the field. */
final class Amounts {

    private final TypedForm form;

    Amounts(TypedForm form) {
        this.form = form;
    }

    /** A number that has to be there. */
    double needed(String name, String what, double low, double high, String unit) {
        if (form.value(name).isEmpty()) {
            form.problem(name, "Give %s.".formatted(what));
        }
        return or(name, low, what, low, high, unit);
    }

    /** A number, or what stands for it where nothing is typed or what is typed cannot be. */
    double or(String name, double otherwise, String what, double low, double high, String unit) {
        BigDecimal typed = form.number(name);
        if (typed == null) {
            return otherwise;
        }
        double value = typed.doubleValue();
        if (value < low || value > high) {
            form.problem(
                    name,
                    "%s cannot be %s: from %s to %s."
                            .formatted(
                                    what.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + what.substring(1),
                                    Numbers.text(value, unit),
                                    Numbers.text(low),
                                    Numbers.text(high, unit)));
            return otherwise;
        }
        return value;
    }
}
