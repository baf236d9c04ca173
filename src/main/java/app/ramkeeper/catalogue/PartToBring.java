package app.ramkeeper.catalogue;

import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A part that a kind of task needs.
 *
 * @param model the pump model it fits; null where the catalogue knows no part of that kind for the model
 * @param number the part's number; null where only its kind is known
 */
public record PartToBring(
        UUID kind,
        @Nullable UUID model,
        PartKind partKind,
        @Nullable UUID part,
        @Nullable String number,
        @Nullable String name,
        @Nullable String position,
        BigDecimal quantity) {}
