package app.ramkeeper.quotes.job;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.Errors;

/** A phase of a job, as its page posts it. */
public record PhaseForm(
        @NotBlank @Size(max = 120) @Nullable String name,
        @Nullable LocalDate fromDate,
        @Nullable LocalDate untilDate,
        @Nullable List<UUID> people,
        @Size(max = 300) @Nullable String plant,
        @Size(max = 200) @Nullable String subcontractor,
        @Size(max = 300) @Nullable String heldBecause,
        @PastOrPresent @Nullable LocalDate doneOn,
        @Size(max = 2000) @Nullable String note,
        @Nullable Integer version) {

    void check(Errors errors) {
        if (untilDate != null && fromDate == null) {
            errors.rejectValue("fromDate", "jobs.phase.from.missing");
        }
        if (untilDate != null && fromDate != null && untilDate.isBefore(fromDate)) {
            errors.rejectValue("untilDate", "prices.dates.order");
        }
        if (doneOn != null && heldBecause != null) {
            errors.rejectValue("heldBecause", "jobs.phase.held.done");
        }
    }

    /** Whether a person is ticked; for the page. */
    public boolean has(String person) {
        return people != null && people.contains(UUID.fromString(person));
    }

    PhaseForm withVersion(@Nullable Integer saved) {
        return new PhaseForm(name, fromDate, untilDate, people, plant, subcontractor, heldBecause, doneOn, note, saved);
    }
}
