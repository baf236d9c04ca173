package app.ramkeeper.identity.people;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Days on which a person is away.
 *
 * @param person whose they are; null where the page is the person's
 */
record LeaveForm(
        @Nullable UUID person,
        @Nullable @NotNull LocalDate fromDate,
        @Nullable @NotNull LocalDate untilDate,
        @Nullable @Size(max = 200) String note) {

    @AssertTrue(message = "{identity.leave.order}")
    boolean isInOrder() {
        return fromDate == null || untilDate == null || !untilDate.isBefore(fromDate);
    }
}
