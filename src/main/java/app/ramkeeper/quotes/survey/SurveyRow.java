package app.ramkeeper.quotes.survey;

import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A survey as it is kept.
 *
 * @param typed field name to what was typed
 * @param done whether a design was chosen on it; it does not change any more then
 */
public record SurveyRow(
        UUID id, UUID enquiry, @Nullable LocalDate surveyedOn, boolean done, Map<String, String> typed, int version) {}
