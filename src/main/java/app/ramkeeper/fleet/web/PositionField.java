package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.PositionCheck;
import app.ramkeeper.fleet.PositionText;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.validation.BindingResult;
import org.springframework.validation.FieldError;

/** Reads a typed position; asks about one that lies far from every depot. */
@Component
class PositionField {

    private final PositionCheck check;

    PositionField(PositionCheck check) {
        this.check = check;
    }

    /** The position, or null with an error beside the field if it cannot be read or must be asked about. */
    @Nullable
    Position read(@Nullable String typed, boolean asTyped, BindingResult errors) {
        if (typed == null || errors.hasFieldErrors("position")) {
            return null;
        }
        try {
            Position position = PositionText.parse(typed);
            if (!asTyped) {
                check.doubt(position).ifPresent(doubt -> reject(errors, typed, question(doubt)));
            }
            return position;
        } catch (IllegalArgumentException unreadable) {
            reject(errors, typed, String.valueOf(unreadable.getMessage()));
            return null;
        }
    }

    /** Added as it is: a form whose other fields cannot be read has no bean to take the value from. */
    private static void reject(BindingResult errors, String typed, String sentence) {
        errors.addError(new FieldError(errors.getObjectName(), "position", typed, false, null, null, sentence));
    }

    private static String question(PositionCheck.Doubt doubt) {
        String far = String.format(Locale.ROOT, "This lies %.0f km from the nearest depot.", doubt.kilometres());
        return doubt.better()
                .map(better -> far + " Did you mean " + better + "? Else tick that it is right as typed.")
                .orElse(far + " If it is right, tick that it is right as typed.");
    }
}
