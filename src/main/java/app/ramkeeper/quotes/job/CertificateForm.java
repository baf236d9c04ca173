package app.ramkeeper.quotes.job;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A certificate, as its page posts it. */
public record CertificateForm(
        @NotBlank @Size(max = 160) @Nullable String holder,
        @NotBlank @Size(max = 160) @Nullable String what,
        @Size(max = 80) @Nullable String number,
        @Nullable LocalDate expiresOn) {}
