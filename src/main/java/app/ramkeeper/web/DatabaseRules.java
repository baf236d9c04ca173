package app.ramkeeper.web;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;
import org.springframework.context.MessageSource;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Component;
import org.springframework.validation.Errors;

/**
 * Says in words which rule of the database a change would break: constraint {@code uq_sites_reference} has the sentence
 * {@code rule.uq_sites_reference} and, if it belongs beside a field, {@code rule.uq_sites_reference.field}.
 */
@Component
public class DatabaseRules {

    private final MessageSource messages;

    DatabaseRules(MessageSource messages) {
        this.messages = messages;
    }

    /** The sentence of the rule that was broken, if it has one. */
    public Optional<String> sentence(DataIntegrityViolationException failure) {
        return constraint(failure).map(name -> message("rule." + name));
    }

    /** Puts the sentence beside its field, or at the top of the form; a rule without a sentence is thrown on. */
    public void reject(Errors errors, DataIntegrityViolationException failure) {
        String name = constraint(failure).orElseThrow(() -> failure);
        String sentence = message("rule." + name);
        if (sentence == null) {
            throw failure;
        }
        String field = message("rule." + name + ".field");
        if (field != null && errors.getFieldType(field) != null) {
            errors.rejectValue(field, name, sentence);
        } else {
            errors.reject(name, sentence);
        }
    }

    private @Nullable String message(String key) {
        return messages.getMessage(key, null, null, Locale.UK);
    }

    private static Optional<String> constraint(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof PSQLException told) {
                ServerErrorMessage server = told.getServerErrorMessage();
                return server == null ? Optional.empty() : Optional.ofNullable(server.getConstraint());
            }
        }
        return Optional.empty();
    }
}
