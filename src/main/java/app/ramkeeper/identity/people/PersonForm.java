package app.ramkeeper.identity.people;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;

/** What the page about a person posts. */
record PersonForm(
        @NotNull(message = "{person.name.missing}") @Size(max = 120, message = "{text.tooLong}")
        String name,

        @Nullable @Size(max = 50, message = "{text.tooLong}")
        String phone,

        @Nullable @Email(message = "{email.wrong}") @Size(max = 200, message = "{text.tooLong}")
        String email,

        @Nullable UUID depotId,

        @Nullable @DateTimeFormat(iso = DateTimeFormat.ISO.DATE)
        LocalDate startedOn,

        @Nullable @DateTimeFormat(iso = DateTimeFormat.ISO.DATE)
        LocalDate leftOn,

        @Nullable @Size(max = 100, message = "{text.tooLong}")
        String vehicle,

        @Nullable @Size(max = 120, message = "{text.tooLong}")
        String nextOfKin,

        @Nullable @Size(max = 50, message = "{text.tooLong}")
        String nextOfKinPhone,

        @Nullable Set<String> skills,
        @Nullable Integer version) {

    PersonForm {
        skills = skills == null ? Set.of() : Set.copyOf(skills);
    }

    @AssertTrue(message = "{person.leftOn.early}")
    boolean isLeftOnAfterStart() {
        return startedOn == null || leftOn == null || !leftOn.isBefore(startedOn);
    }
}
