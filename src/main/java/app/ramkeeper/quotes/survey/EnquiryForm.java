package app.ramkeeper.quotes.survey;

import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is put down when somebody asks for water to be lifted.
 *
 * @param customer if they are on the register
 * @param q words to find the site by; not kept
 * @param site if it is on the register
 * @param place in words, if it is not
 */
public record EnquiryForm(
        @NotBlank @Size(max = 200) @Nullable String customerName,
        @Nullable UUID customer,

        @Size(max = 60) @Nullable String phone,

        @Email @Size(max = 254) @Nullable String email,

        @Size(max = 200) @Nullable String q,
        @Nullable UUID site,
        @Size(max = 300) @Nullable String place,

        @NotNull @PastOrPresent @Nullable LocalDate receivedOn,

        @Size(max = 10_000) @Nullable String note,
        @Nullable Integer version) {

    static EnquiryForm blank(LocalDate today, @Nullable UUID site) {
        return new EnquiryForm(null, null, null, null, null, site, null, today, null, null);
    }

    EnquiryForm bare() {
        return new EnquiryForm(customerName, customer, phone, email, null, site, place, receivedOn, note, version);
    }
}
