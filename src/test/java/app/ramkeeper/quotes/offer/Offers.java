package app.ramkeeper.quotes.offer;

import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.survey.SurveyId;
import app.ramkeeper.shared.Uuids;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A price list and quotes for tests. */
public final class Offers {

    private final JdbcClient jdbc;

    public Offers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Somebody to quote for; nothing of the register yet. */
    public static QuoteFor whom(@Nullable String email) {
        return new QuoteFor(
                null,
                null,
                null,
                "Ram pump for the top tank",
                "Hemi Stone",
                "Mill Lane",
                email,
                "00 555 0199",
                "Stone Flat");
    }

    /** A design all of whose parts stand on the price list. */
    public ChosenDesign priced() {
        return priced(SurveyId.next());
    }

    /** The same, chosen on that survey. */
    ChosenDesign priced(SurveyId survey) {
        UUID model = Uuids.next();
        jdbc.sql("insert into pump_models (id, name) values (?, ?)")
                .params(model, "Model " + model)
                .update();
        thing("PUMP", "Pump " + model, "piece", "2150", model);
        thing("FITTINGS_KIT", "Kit " + model, "piece", "425.50", model);
        return Designs.of(
                survey,
                model,
                pipe("DRIVE", "6", "34.90"),
                pipe("DELIVERY", "100", "2.82"),
                pipe("DELIVERY", null, "2.05"));
    }

    /** A survey of a new enquiry with this in it, as JSON. */
    SurveyId survey(String typed) {
        UUID enquiry = Uuids.next();
        SurveyId survey = SurveyId.next();
        jdbc.sql(
                        "insert into enquiries (id, customer_name, place, received_on) values (?, 'Hemi Stone', 'Stone Flat', ?)")
                .params(enquiry, LocalDate.of(2026, 1, 5))
                .update();
        jdbc.sql("insert into surveys (id, enquiry_id, draft) values (?, ?, cast(? as jsonb))")
                .params(survey.value(), enquiry, typed)
                .update();
        return survey;
    }

    /** A thing with a price for ever. */
    public UUID thing(String kind, String name, String unit, String price, @Nullable UUID model) {
        UUID id = Uuids.next();
        jdbc.sql(
                        "insert into priced_things (id, code, kind, name, unit, model_id) values (:id, :code, :kind, :name, :unit, :model)")
                .param("id", id)
                .param("code", "T-" + id)
                .param("kind", kind)
                .param("name", name)
                .param("unit", unit)
                .param("model", model, java.sql.Types.OTHER)
                .update();
        price(id, price);
        return id;
    }

    private UUID pipe(String use, @Nullable String soldIn, String price) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into priced_things (id, code, kind, name, unit, pipe_use, material, series, outside_mm, wall_mm, class_bar, sold_in_m)
                        values (:id, :code, 'PIPE', :name, 'm', :use, 'PE100', 'SDR 11', 32, 3, 16, :sold)""")
                .param("id", id)
                .param("code", "P-" + id)
                .param("name", "Pipe " + price)
                .param("use", use)
                .param("sold", soldIn == null ? null : new BigDecimal(soldIn), java.sql.Types.NUMERIC)
                .update();
        price(id, price);
        return id;
    }

    private void price(UUID thing, String price) {
        jdbc.sql("insert into prices (id, thing_id, from_date, price, cost) values (?, ?, ?, ?, ?)")
                .params(
                        Uuids.next(),
                        thing,
                        LocalDate.of(2020, 1, 1),
                        new BigDecimal(price),
                        new BigDecimal(price).multiply(new BigDecimal("0.6")))
                .update();
    }

    /** The tax rate that tests reckon with: 15 %, the only one there is. */
    public void tax() {
        if (jdbc.sql("select count(*) from priced_things where kind = 'TAX'")
                        .query(Integer.class)
                        .single()
                == 0) {
            thing("TAX", "Tax", "%", "15", null);
        }
    }

    /** Gives every line without a price one, so that the quote can be sent. */
    public void priceTheRest(QuoteId id) {
        jdbc.sql("update quote_lines set price = 10 where price is null and revision_id in"
                        + " (select id from quote_revisions where quote_id = ?)")
                .param(id.value())
                .update();
    }
}
