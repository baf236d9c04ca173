package app.ramkeeper.quotes.survey;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies an enquiry. */
public record EnquiryId(UUID value) {

    public static EnquiryId next() {
        return new EnquiryId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
