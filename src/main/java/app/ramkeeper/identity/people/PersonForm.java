package app.ramkeeper.identity.people;

import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What the page about a person posts. */
record PersonForm(
        @NotNull @Size(max = 120) String name,
        @Nullable @Size(max = 50) String phone,
        @Nullable @Email @Size(max = 200) String email,
        @Nullable UUID depotId,
        @Nullable LocalDate startedOn,
        @Nullable LocalDate leftOn,
        @Nullable @Size(max = 100) String vehicle,
        @Nullable @Size(max = 120) String nextOfKin,
        @Nullable @Size(max = 50) String nextOfKinPhone,
        Set<String> skills,
        @Nullable Integer version) {

    PersonForm {
        skills = skills == null ? Set.of() : Set.copyOf(skills);
    }

    static PersonForm blank() {
        return new PersonForm("", null, null, null, null, null, null, null, null, Set.of(), null);
    }

    @AssertTrue(message = "{identity.person.order}")
    boolean isInOrder() {
        return startedOn == null || leftOn == null || !leftOn.isBefore(startedOn);
    }
}
