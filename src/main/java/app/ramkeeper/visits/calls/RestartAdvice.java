package app.ramkeeper.visits.calls;

import app.ramkeeper.visits.Symptom;
import java.util.List;
import java.util.Locale;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** What may be said to a caller, by what they see. Common practice, without a source; the cautions come first. */
@Component
public class RestartAdvice {

    private final MessageSource messages;

    RestartAdvice(MessageSource messages) {
        this.messages = messages;
    }

    /** To be said before anything else. */
    public List<String> cautions() {
        return lines("calls.cautions");
    }

    /** What the caller may try, in its order. */
    public List<String> steps(Symptom symptom) {
        return lines("calls.advice." + symptom.name());
    }

    private List<String> lines(String key) {
        return messages.getMessage(key, null, Locale.UK).lines().toList();
    }
}
