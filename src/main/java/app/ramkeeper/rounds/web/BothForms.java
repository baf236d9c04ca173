package app.ramkeeper.rounds.web;

import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.LostUpdate.Difference;
import java.util.List;

/** What was typed into a form beside what somebody else has saved of the same thing meanwhile. */
final class BothForms {

    private BothForms() {}

    /**
     * A field that may differ.
     *
     * @param label message key of its label
     * @param id of its input in the page
     */
    record Field(String name, String label, String id) {

        Field(String name, String label) {
            this(name, label, name);
        }
    }

    /** The fields in which the two differ; the typed form carries the present version from then on. */
    static LostUpdate between(TypedForm typed, TypedForm present, List<Field> fields) {
        typed.set("version", present.value("version"));
        return new LostUpdate(fields.stream()
                .filter(field -> !typed.value(field.name()).equals(present.value(field.name())))
                .map(field -> new Difference(
                        field.id(),
                        field.label(),
                        words(typed.value(field.name()), present.value(field.name())),
                        words(present.value(field.name()), typed.value(field.name()))))
                .toList());
    }

    /** A field that is "true" in one of the two is a tick. */
    private static String words(String value, String other) {
        return value.equals("true") ? "yes" : value.isEmpty() && other.equals("true") ? "no" : value;
    }
}
