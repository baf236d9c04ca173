package app.ramkeeper.visits.calls;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;

/** When the call-out is and who drives. */
public record CallVisitForm(
        @NotNull @DateTimeFormat(iso = DateTimeFormat.ISO.DATE) @Nullable
        LocalDate on,

        @DateTimeFormat(iso = DateTimeFormat.ISO.TIME) @Nullable
        LocalTime from,

        @NotNull @Min(5) @Max(1440) @Nullable Integer minutes,
        @NotNull @Nullable UUID lead,
        @Nullable UUID second) {}
