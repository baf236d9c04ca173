package app.ramkeeper.identity.people;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Days on which a person is away. */
record LeaveForm(
        @Nullable @NotNull LocalDate fromDate,
        @Nullable @NotNull LocalDate untilDate,
        @Nullable @Size(max = 200) String note) {

    @AssertTrue(message = "{identity.leave.order}")
    boolean isInOrder() {
        return fromDate == null || untilDate == null || !untilDate.isBefore(fromDate);
    }
}
