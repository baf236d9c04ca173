package app.ramkeeper.quotes.offer;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.quotes.survey.EnquiryId;
import org.jspecify.annotations.Nullable;

/**
 * Whom a quote is for and where; the quote keeps these words whatever becomes of the register.
 *
 * @param customer if the register knows them already
 * @param site if the register knows it already
 */
public record QuoteFor(
        @Nullable EnquiryId enquiry,
        @Nullable CustomerId customer,
        @Nullable SiteId site,
        String title,
        String customerName,
        @Nullable String address,
        @Nullable String email,
        @Nullable String phone,
        String place) {}
