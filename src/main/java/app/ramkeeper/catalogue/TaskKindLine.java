package app.ramkeeper.catalogue;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A kind of task as its list shows it. */
public record TaskKindLine(
        UUID id,
        String name,
        Scope scope,
        Schedule schedule,
        String howOften,
        Life life,
        int earlyDays,
        int lateDays,
        int minutes,
        int crew,
        boolean watched,
        boolean drinkingWater,
        int models,
        int waters,
        @Nullable LocalDate withdrawnOn) {

    static TaskKindLine of(TaskKind kind) {
        TaskTerms terms = kind.terms();
        return new TaskKindLine(
                kind.id(),
                kind.name(),
                terms.scope(),
                terms.schedule(),
                howOften(terms),
                terms.life(),
                terms.earlyDays(),
                terms.lateDays(),
                kind.minutes(),
                kind.crew(),
                terms.watched(),
                terms.drinkingWater(),
                terms.byModel().size(),
                terms.byWater().size(),
                kind.withdrawnOn());
    }

    private static String howOften(TaskTerms terms) {
        return terms.season() == null
                ? terms.interval().words()
                : terms.season().getDayOfMonth() + " "
                        + terms.season()
                                .getMonth()
                                .getDisplayName(java.time.format.TextStyle.SHORT, java.util.Locale.UK);
    }
}
