package app.ramkeeper.visits;

import app.ramkeeper.web.Say;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Puts a visit into a few sentences. */
@Component
class VisitWords {

    static final int NOTE = 160;

    private final MessageSource messages;
    private final Say say;

    VisitWords(MessageSource messages, Say say) {
        this.messages = messages;
        this.say = say;
    }

    /** @param at the install that all of it is about, where the site has several */
    String of(
            @Nullable String at,
            ReportOutcome outcome,
            @Nullable String reason,
            List<String> done,
            List<String> good,
            List<String> undone,
            List<String> findings,
            List<String> delivered,
            @Nullable String note) {
        List<String> sentences = new ArrayList<>();
        if (outcome == ReportOutcome.COULD_NOT && reason != null) {
            sentences.add(word("visits.words.inVain", word("visits.reason." + reason)));
        }
        add(sentences, "visits.words.done", done);
        add(sentences, "visits.words.good", good);
        add(sentences, "visits.words.undone", undone);
        findings.forEach(finding -> sentences.add(finding(finding)));
        if (!delivered.isEmpty()) {
            sentences.add(word(
                    "visits.words.delivered", delivered.stream().map(this::flow).collect(Collectors.joining(", "))));
        }
        if (note != null) {
            sentences.add(note.length() <= NOTE ? note : note.substring(0, NOTE).strip() + " …");
        }
        if (at != null && !sentences.isEmpty()) {
            sentences.add(0, word("visits.words.at", at));
        }
        return sentences.isEmpty() ? word("visits.words.nothing") : String.join(" ", sentences);
    }

    private void add(List<String> sentences, String key, List<String> names) {
        if (!names.isEmpty()) {
            sentences.add(word(key, String.join(", ", names)));
        }
    }

    /** A flow in SI and, after a bar, which install. */
    private String flow(String packed) {
        String[] parts = packed.split("\\|", 2);
        return say.perMinute(Double.valueOf(parts[0])) + parts[1];
    }

    private String finding(String packed) {
        String[] parts = packed.split("\\|", 4);
        String text = word("visits.symptom." + parts[0]) + parts[1];
        text += parts[2].isEmpty() ? "" : ", " + parts[2];
        return word("visits.words.found", text + (parts[3].isEmpty() ? "" : " → " + parts[3]));
    }

    String word(String key, Object... arguments) {
        return messages.getMessage(key, arguments, Locale.ENGLISH);
    }
}
