package app.ramkeeper.visits.record;

import app.ramkeeper.visits.form.TypedForm;
import java.util.Set;

/** Adds a row to one of the form's groups, for those whose browser runs no script. */
final class MoreRows {

    private static final Set<String> GROUPS = Set.of("extras", "findings", "parts", "lefts");

    private MoreRows() {}

    /** True if the button pressed was one for another row. */
    static boolean added(TypedForm form) {
        String group = form.value("more");
        if (!GROUPS.contains(group)) {
            return false;
        }
        form.set(group, form.rows(group, 1) + 1);
        form.set("more", null);
        return true;
    }
}
