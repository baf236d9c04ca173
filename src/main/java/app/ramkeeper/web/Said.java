package app.ramkeeper.web;

import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Puts into words what became of a step; the layout calls it as {@code ${@said.of(saved)}}. */
@Component("said")
public class Said {

    private final MessageSource messages;

    Said(MessageSource messages) {
        this.messages = messages;
    }

    public String of(Object saved) {
        return saved instanceof Saved step
                ? messages.getMessage(step.key(), step.with().toArray(), LocaleContextHolder.getLocale())
                : String.valueOf(saved);
    }
}
