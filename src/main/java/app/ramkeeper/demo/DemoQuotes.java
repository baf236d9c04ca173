package app.ramkeeper.demo;

import app.ramkeeper.audit.Actor;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.quotes.design.ChosenDesign;
import app.ramkeeper.quotes.design.ChosenDesign.PerDay;
import app.ramkeeper.quotes.design.ChosenDesign.PipeLine;
import app.ramkeeper.quotes.design.ChosenDesign.ProfilePoint;
import app.ramkeeper.quotes.design.ChosenDesign.RuleLine;
import app.ramkeeper.quotes.design.ChosenDesign.Vessel;
import app.ramkeeper.quotes.design.DesignId;
import app.ramkeeper.quotes.design.FirstDesign;
import app.ramkeeper.quotes.offer.Answered;
import app.ramkeeper.quotes.offer.Answers;
import app.ramkeeper.quotes.offer.QuoteFor;
import app.ramkeeper.quotes.offer.QuoteId;
import app.ramkeeper.quotes.offer.Quotes;
import app.ramkeeper.quotes.offer.Sending;
import app.ramkeeper.quotes.survey.EnquiryId;
import app.ramkeeper.quotes.survey.SurveyId;
import java.util.List;
import java.util.UUID;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;

/** A few quotes of the invented contractor, one in each state, made by the same steps as the office makes them. */
@Component
@Profile("trial")
@Order(20)
class DemoQuotes implements ApplicationRunner {

    private static final String BY = "Marama Teal";

    private final JdbcTemplate jdbc;
    private final Quotes quotes;
    private final Sending sending;
    private final Answers answers;
    private final FirstDesign designs;

    DemoQuotes(JdbcTemplate jdbc, Quotes quotes, Sending sending, Answers answers, FirstDesign designs) {
        this.jdbc = jdbc;
        this.quotes = quotes;
        this.sending = sending;
        this.answers = answers;
        this.designs = designs;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        boolean demo = !jdbc.queryForList("select 1 from priced_things where code = 'RAM-H50'")
                .isEmpty();
        if (!demo || !jdbc.queryForList("select 1 from quotes limit 1").isEmpty()) {
            return;
        }
        SecurityContextHolder.getContext()
                .setAuthentication(UsernamePasswordAuthenticationToken.authenticated(
                        "demo", null, AuthorityUtils.createAuthorityList("ROLE_OFFICE")));
        try {
            Actor.as(new Actor("system", "demo"), () -> {
                make();
                return true;
            });
        } finally {
            SecurityContextHolder.clearContext();
        }
    }

    private void make() {
        quote("Ram pump for the hill troughs", "Perrin Vale", "Tern Creek", 2.1, 31);
        QuoteId old = sent("Ram pump for the house tank", "Odette Marsh", "Marsh Farm", 2.6, 40);
        jdbc.update(
                "update quote_revisions set sent_at = sent_at - interval '16 days' where quote_id = ?", old.value());
        jdbc.update("update quote_settings set bill_from = current_date - 5");
        QuoteId lost = sent("Ram pump for the yards", "Silas Crewe", "Crewe Flats", 1.8, 26);
        answers.decline(lost, 1, "Silas Crewe", Answered.PHONE, "price");
        QuoteId lapsed = sent("Second ram for the top paddock", "Wren Tolley", "Tolley Run", 3.2, 55);
        jdbc.update(
                "update quote_revisions set valid_until = current_date - 10, sent_at = sent_at - interval '70 days'"
                        + " where quote_id = ?",
                lapsed.value());
        QuoteId won = known();
        sending.send(won, BY);
        answers.accept(won, 1, "Owner", Answered.PAPER, "water all year");
        jdbc.update(
                "update job_phases set from_date = current_date + position * 2, until_date = current_date + position * 2 + 1"
                        + " where job_id = ?",
                won.value());
        jdbc.update(
                "update job_phases set from_date = current_date - 3, until_date = current_date - 2, done_on = current_date - 2,"
                        + " plant = '1.7 t digger' where job_id = ? and kind = 'DIG'",
                won.value());
        jdbc.update(
                "update job_phases set held_since = current_date - 1, held_because = 'Rain, the track is soft' where job_id = ?"
                        + " and kind = 'LAY'",
                won.value());
    }

    private QuoteId sent(String title, String customer, String place, double fallM, double liftM) {
        QuoteId id = quote(title, customer, place, fallM, liftM);
        sending.send(id, BY);
        return id;
    }

    private QuoteId quote(String title, String customer, String place, double fallM, double liftM) {
        return quotes.open(
                new QuoteFor(null, null, null, title, customer, place, null, "00 555 0144", place),
                design(fallM, liftM),
                BY);
    }

    /** For a customer and site of the register, from enquiry and survey on. */
    private QuoteId known() {
        EnquiryId enquiry = EnquiryId.next();
        jdbc.update("""
                        insert into enquiries (id, customer_id, site_id, customer_name, phone, received_on, note)
                        select ?, c.id, s.id, c.name, c.phone, current_date - 20, 'A new line of troughs below the ridge'
                        from customers c join site_parties p on p.customer_id = c.id and p.part = 'OWNER'
                          join sites s on s.id = p.site_id
                        where s.latitude is not null order by c.reference limit 1""", enquiry.value());
        PersonId office = new PersonId(id("select id from people where name = '" + BY + "'"));
        return quotes.fromDesign(designs.choose(surveyed(enquiry), office), BY);
    }

    /** What was measured at the place, as the survey form keeps it. */
    private SurveyId surveyed(EnquiryId enquiry) {
        SurveyId id = SurveyId.next();
        jdbc.update("""
                        insert into surveys (id, enquiry_id, surveyed_on, draft)
                        values (?, ?, current_date - 14, jsonb_build_object('surveyedOn', current_date - 14,
                          'demand[0].kind', 'cattle/not in milk', 'demand[0].count', '40', 'method', 'BUCKET',
                          'source[0].litres', '20', 'source[0].seconds', '13.1', 'source[1].litres', '20',
                          'source[1].seconds', '13.6', 'source[2].litres', '20', 'source[2].seconds', '12.9',
                          'measuredDry', 'true', 'mustStayLMin', '20', 'waterC', '11', 'altitudeM', '340', 'waterClass', 'CLEAR',
                          'fallM', '3', 'driveLengthM', '18',
                          'profile', E'0 0\\n120 9\\n260 17\\n430 28', 'takeLicence', 'APPLIED',
                          'takeLicenceOn', current_date + 60, 'easement', 'NOT_NEEDED', 'discharge', 'NOT_NEEDED',
                          'access', 'Second gate past the yards, then the track along the fence', 'walkMinutes', '15'))""", id.value(), enquiry.value());
        return id;
    }

    /** An even slope, the drive flow of a dry month at 57 % D'Aubuisson efficiency. */
    private ChosenDesign design(double fallM, double liftM) {
        double driveFlow = 70;
        double delivered = 0.57 * driveFlow * fallM / liftM;
        double day = delivered * 1440;
        return new ChosenDesign(
                DesignId.next(),
                SurveyId.next(),
                EnquiryId.next(),
                id("select model_id from priced_things where code = 'RAM-H50'"),
                "Heron 50",
                1,
                new PipeLine(id("GS-50", "id"), "Galvanised steel tube DN 50 medium", 0, 12, 12, 53.1, 25.),
                List.of(
                        new PipeLine(id("PE-40-12.5", "id"), "PE100 pipe 40 mm 12.5 bar", 0, 180, 181, 34, 12.5),
                        new PipeLine(id("PE-40-10", "id"), "PE100 pipe 40 mm 10 bar", 180, 480, 302, 35.2, 10.)),
                new Vessel(10, Math.round(liftM / 10.2 * 8) / 10., Math.ceil(liftM / 10.2) + 2),
                new PerDay(round(day * 0.85), round(day), round(day * 1.13)),
                round(day * 0.8),
                fallM,
                liftM,
                driveFlow,
                delivered,
                List.of(new RuleLine(
                        "Drive pipe length",
                        "holds",
                        "12 m is " + Math.round(12 / 0.0531) + " bores, within 150 to 1000.",
                        null)),
                List.of(
                        new ProfilePoint(0, 0, liftM, liftM + 3, 12.5),
                        new ProfilePoint(180, liftM * 0.3, liftM, liftM + 2, 12.5),
                        new ProfilePoint(480, liftM, liftM, liftM, 10.)),
                List.of("In a dry month the source gives the drive flow that was measured in February."),
                List.of(
                        "Ask the water authority whether this take needs a licence, and how much must stay in the stream."));
    }

    private static double round(double litres) {
        return Math.rint(litres / 10) * 10;
    }

    private UUID id(String code, String column) {
        return id("select " + column + " from priced_things where code = '" + code + "'");
    }

    private UUID id(String query) {
        return java.util.Objects.requireNonNull(jdbc.queryForObject(query, UUID.class));
    }
}
