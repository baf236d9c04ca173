package app.ramkeeper.quotes.survey;

import app.ramkeeper.visits.form.TypedForm;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.springframework.util.MultiValueMap;

/** Between the kept text of a survey and the form that shows it. */
public final class SurveyForms {

    private static final Set<String> NOT_KEPT = Set.of("_csrf", "version", "more", "designs", "photoFiles", "track");
    private static final Pattern NAME = Pattern.compile("[A-Za-z]{1,30}(\\[\\d{1,2}]\\.[A-Za-z]{1,20})?");
    private static final int LONGEST = 400_000;

    private SurveyForms() {}

    /** The form as it was typed. */
    public static TypedForm of(SurveyRow row) {
        TypedForm form = new TypedForm();
        row.typed().forEach(form::set);
        return form;
    }

    /** What is kept of a posted form: known shapes of names, text without control characters. */
    public static Map<String, String> kept(MultiValueMap<String, String> posted, TypedForm form) {
        Map<String, String> typed = new LinkedHashMap<>();
        for (String name : posted.keySet()) {
            String value = form.value(name);
            if (!NOT_KEPT.contains(name)
                    && NAME.matcher(name).matches()
                    && !value.isEmpty()
                    && value.length() <= LONGEST) {
                typed.put(name, value);
            }
        }
        return typed;
    }

    /** What a survey at another time starts from: the same place, but the water is measured anew. */
    static Map<String, String> again(Map<String, String> typed) {
        Map<String, String> next = new LinkedHashMap<>(typed);
        next.keySet()
                .removeIf(name -> name.startsWith("source")
                        || name.startsWith("notch")
                        || name.startsWith("float")
                        || name.startsWith("given")
                        || name.equals("measuredDry")
                        || name.startsWith("dry")
                        || name.equals("surveyedOn"));
        return next;
    }
}
