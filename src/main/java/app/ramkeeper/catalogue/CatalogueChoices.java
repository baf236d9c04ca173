package app.ramkeeper.catalogue;

import app.ramkeeper.web.Choice;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** The choices of the catalogue's forms, in words. */
@Component
class CatalogueChoices {

    private final MessageSource words;

    CatalogueChoices(MessageSource words) {
        this.words = words;
    }

    List<Choice> partKinds() {
        return of("part.kind.", PartKind.values());
    }

    List<Choice> vessels() {
        return of("vessel.", VesselKind.values());
    }

    List<Choice> schedules() {
        return of("schedule.", Schedule.values());
    }

    List<Choice> scopes() {
        return of("scope.", Scope.values());
    }

    List<Choice> lives() {
        return of("life.", Life.values());
    }

    private List<Choice> of(String prefix, Enum<?>[] values) {
        return Stream.of(values)
                .map(value -> new Choice(value.name(), words.getMessage(prefix + value.name(), null, Locale.UK)))
                .toList();
    }
}
