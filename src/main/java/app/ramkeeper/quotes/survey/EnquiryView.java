package app.ramkeeper.quotes.survey;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An enquiry as its page and the list show it. */
public record EnquiryView(
        UUID id,
        @Nullable UUID customerId,
        @Nullable String customer,
        @Nullable UUID siteId,
        String place,
        String customerName,
        @Nullable String phone,
        @Nullable String email,
        LocalDate receivedOn,
        @Nullable String note,
        EnquiryState state,
        @Nullable String reason,
        int version,
        long surveys,
        long designs) {

    /** Whether it still wants something. */
    public boolean live() {
        return state == EnquiryState.OPEN || state == EnquiryState.QUOTED;
    }
}
