package app.ramkeeper.quotes.survey;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a survey. */
public record SurveyId(UUID value) {

    public static SurveyId next() {
        return new SurveyId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
