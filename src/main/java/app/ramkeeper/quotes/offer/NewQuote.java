package app.ramkeeper.quotes.offer;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.shared.Missing;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Whom a quote from a design is for, by its enquiry, and how far away the site is. */
@Component
class NewQuote {

    private record Asked(
            @Nullable UUID customerId,
            @Nullable UUID siteId,
            String customerName,
            @Nullable String address,
            @Nullable String phone,
            @Nullable String email,
            String place) {}

    private final JdbcClient jdbc;
    private final double roadFactor;

    NewQuote(JdbcClient jdbc, @Value("${ramkeeper.road-factor}") double roadFactor) {
        this.jdbc = jdbc;
        this.roadFactor = roadFactor;
    }

    QuoteFor whom(ChosenDesign design) {
        Asked asked = jdbc.sql("""
                        select e.customer_id, e.site_id, coalesce(c.name, e.customer_name) as customer_name,
                               c.billing_address as address, coalesce(e.phone, c.phone) as phone, coalesce(e.email, c.email) as email,
                               coalesce(s.name, e.place, e.customer_name) as place
                        from enquiries e left join customers c on c.id = e.customer_id left join sites s on s.id = e.site_id
                        where e.id = ?""")
                .param(design.enquiry().value())
                .query(Asked.class)
                .optional()
                .orElseThrow(() -> new Missing("enquiry", design.enquiry()));
        return new QuoteFor(
                new EnquiryId(design.enquiry().value()),
                Optional.ofNullable(asked.customerId()).map(CustomerId::new).orElse(null),
                Optional.ofNullable(asked.siteId()).map(SiteId::new).orElse(null),
                "Ram pump " + design.pumpName() + " at " + cut(asked.place(), 100),
                cut(asked.customerName(), 160),
                asked.address(),
                asked.email(),
                asked.phone(),
                cut(asked.place(), 160));
    }

    private static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most);
    }

    /** Kilometres from the site's depot and back: the great circle by the factor for roads; null if unknown. */
    @Nullable
    Double kilometres(@Nullable SiteId site) {
        if (site == null) {
            return null;
        }
        return jdbc.sql("""
                        select s.latitude, s.longitude, d.latitude as from_latitude, d.longitude as from_longitude
                        from sites s join depots d on d.id = s.depot_id
                        where s.id = ? and s.latitude is not null and d.latitude is not null""")
                .param(site.value())
                .query((row, number) -> 2
                        * roadFactor
                        * new app.ramkeeper.fleet.Position(
                                        row.getDouble("from_latitude"), row.getDouble("from_longitude"))
                                .kilometresTo(new app.ramkeeper.fleet.Position(
                                        row.getDouble("latitude"), row.getDouble("longitude"))))
                .optional()
                .orElse(null);
    }
}
