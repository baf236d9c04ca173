package app.ramkeeper.quotes.offer;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.quotes.survey.SurveyedPlace;
import app.ramkeeper.quotes.survey.Surveys;
import app.ramkeeper.shared.Missing;
import java.sql.Types;
import java.util.Comparator;
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
    private final Surveys surveys;
    private final double roadFactor;

    NewQuote(JdbcClient jdbc, Surveys surveys, @Value("${ramkeeper.road-factor}") double roadFactor) {
        this.jdbc = jdbc;
        this.surveys = surveys;
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

    /**
     * Kilometres from the depot and back: the great circle by the factor for roads; null if unknown. A site that is not on the
     * register yet lies where its survey says; a site without a depot is served from the nearest.
     */
    @Nullable
    Double kilometres(@Nullable SiteId site, ChosenDesign design) {
        return jdbc.sql("""
                        select s.latitude, s.longitude, s.depot_id from sites s where s.id = ? and s.latitude is not null""")
                .param(1, site == null ? null : site.value(), Types.OTHER)
                .query((row, number) -> from(
                        new Position(row.getDouble("latitude"), row.getDouble("longitude")),
                        row.getObject("depot_id", UUID.class)))
                .optional()
                .or(() -> surveys.place(design.survey())
                        .map(SurveyedPlace::position)
                        .map(position -> from(position, null)))
                .filter(Double::isFinite)
                .orElse(null);
    }

    /** From this depot if its place is known, else from the nearest; endless if there is none. */
    private double from(Position place, @Nullable UUID depot) {
        return jdbc
                .sql("select latitude, longitude, id = :depot as own from depots where latitude is not null")
                .param("depot", depot, Types.OTHER)
                .query((row, number) -> {
                    double far = 2
                            * roadFactor
                            * place.kilometresTo(new Position(row.getDouble("latitude"), row.getDouble("longitude")));
                    return new Way(far, row.getBoolean("own"));
                })
                .stream()
                .min(Comparator.comparing((Way way) -> !way.own()).thenComparing(Way::kilometres))
                .map(Way::kilometres)
                .orElse(Double.POSITIVE_INFINITY);
    }

    private record Way(double kilometres, boolean own) {}
}
