package app.ramkeeper.quotes.offer;

import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Whom a quote is for and its terms, as their page posts them.
 *
 * @param version of the quote
 * @param draftVersion of its draft
 */
public record HeadForm(
        @NotBlank @Size(max = 160) @Nullable String title,
        @NotBlank @Size(max = 160) @Nullable String customerName,
        @Size(max = 1000) @Nullable String address,
        @Email @Size(max = 254) @Nullable String email,
        @Size(max = 60) @Nullable String phone,
        @NotBlank @Size(max = 160) @Nullable String place,

        @NotNull @Nullable LocalDate validUntil,
        @Size(max = 4000) @Nullable String intro,
        @Size(max = 4000) @Nullable String terms,
        @Nullable Integer version,
        @Nullable Integer draftVersion) {

    static HeadForm of(QuoteCard card, Revision draft) {
        return new HeadForm(
                card.title(),
                card.customerName(),
                card.address(),
                card.email(),
                card.phone(),
                card.place(),
                draft.validUntil(),
                draft.intro(),
                draft.terms(),
                card.version(),
                draft.version());
    }

    HeadForm withVersions(HeadForm saved) {
        return new HeadForm(
                title,
                customerName,
                address,
                email,
                phone,
                place,
                validUntil,
                intro,
                terms,
                saved.version(),
                saved.draftVersion());
    }
}
