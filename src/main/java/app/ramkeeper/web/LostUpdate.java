package app.ramkeeper.web;

import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.servlet.ModelAndView;

/**
 * Two people edited one thing by form: the second sees both texts and decides.
 *
 * <p>A controller that catches an {@code OptimisticLockingFailureException} reads the thing anew into a form of the same
 * record type and answers with {@link #page}. The page shows {@code fragments/lost-update :: both} over the form, which
 * keeps what was typed and carries the new version: saving once more is a decision, not an accident.
 *
 * @param differences the fields in which the two differ
 */
public record LostUpdate(List<Difference> differences) {

    private static final Set<String> UNSEEN = Set.of("id", "version");

    /**
     * One field in which the two differ.
     *
     * @param field its name in the form
     * @param label message key of its label
     * @param typed what this person typed
     * @param present what somebody else saved meanwhile
     */
    public record Difference(String field, String label, String typed, String present) {}

    /** Compares two forms of one record type; the label of a field is the message {@code prefix + name}. */
    public static <F extends Record> LostUpdate between(F typed, F present, String prefix) {
        List<Difference> differences = new ArrayList<>();
        for (RecordComponent component : typed.getClass().getRecordComponents()) {
            String name = component.getName();
            Object mine = read(component, typed);
            Object theirs = read(component, present);
            if (!UNSEEN.contains(name) && !Objects.equals(mine, theirs)) {
                differences.add(new Difference(name, prefix + name, text(mine), text(theirs)));
            }
        }
        return new LostUpdate(List.copyOf(differences));
    }

    /**
     * The form again with both texts and status 409.
     *
     * @param version the version now in the register, for the form's hidden field
     */
    public ModelAndView page(String view, Model model, int version) {
        model.addAttribute("version", version);
        return page(view, model);
    }

    /** The form again with both texts and status 409; the form itself carries what it now stands on. */
    public ModelAndView page(String view, Model model) {
        model.addAttribute("lost", this);
        return new ModelAndView(view, model.asMap(), HttpStatus.CONFLICT);
    }

    private static String text(@Nullable Object value) {
        return value instanceof LocalDate day ? Say.day(day) : value == null ? "" : value.toString();
    }

    private static @Nullable Object read(RecordComponent component, Record form) {
        try {
            component.getAccessor().setAccessible(true);
            return component.getAccessor().invoke(form);
        } catch (ReflectiveOperationException broken) {
            throw new IllegalStateException("A form's field cannot be read: " + component.getName(), broken);
        }
    }
}
