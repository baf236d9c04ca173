package app.ramkeeper.quotes.survey;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** What the page of an enquiry shows beside the enquiry itself. */
@Component
class EnquiryScreen {

    private final Surveys surveys;
    private final JdbcClient jdbc;

    EnquiryScreen(Surveys surveys, JdbcClient jdbc) {
        this.surveys = surveys;
        this.jdbc = jdbc;
    }

    /** A survey in a line. */
    public record Line(
            UUID id,
            @Nullable LocalDate on,
            boolean done,
            @Nullable String source,
            @Nullable String problem) {}

    /** A chosen design in a line. */
    public record Chosen(UUID id, LocalDate chosenOn, String pump, int pumps, double p10, double p90, double demand) {}

    /** A quote in a line. */
    public record Quoted(UUID id, @Nullable String number, String title, String state) {}

    void show(Model model, EnquiryView enquiry) {
        model.addAttribute("enquiry", enquiry);
        model.addAttribute(
                "surveys",
                surveys.of(enquiry.id()).stream().map(EnquiryScreen::line).toList());
        model.addAttribute("designs", designs(enquiry.id()));
        model.addAttribute("quotes", quotes(enquiry.id()));
        model.addAttribute("ends", List.of(EnquiryState.LOST, EnquiryState.CLOSED));
    }

    private static Line line(SurveyRow row) {
        var form = SurveyForms.of(row);
        Survey survey = SurveyReader.read(form, new SurveyId(row.id()), new EnquiryId(row.enquiry()));
        String source = survey == null
                ? null
                : "%.0f l/min, dry month %.0f l/min"
                        .formatted(
                                survey.measured().flow().litresPerMinute(),
                                survey.usable().flow().litresPerMinute());
        return new Line(row.id(), row.surveyedOn(), row.done(), source, survey == null ? "missing" : null);
    }

    private List<Chosen> designs(UUID enquiry) {
        return jdbc.sql("""
                        select d.id, d.chosen_on, d.design ->> 'pumpName' as pump, (d.design ->> 'pumps')::int as pumps,
                          d.p10_l_day as p10, d.p90_l_day as p90, d.demand_l_day as demand
                        from design_choices d join surveys s on s.id = d.survey_id where s.enquiry_id = :id order by d.id desc""").param("id", enquiry).query(Chosen.class).list();
    }

    private List<Quoted> quotes(UUID enquiry) {
        return jdbc.sql("""
                        select q.id, q.number, q.title,
                          (select r.state from quote_revisions r where r.quote_id = q.id order by r.revision desc limit 1) as state
                        from quotes q where q.enquiry_id = :id order by q.created_at desc, q.id""").param("id", enquiry).query(Quoted.class).list();
    }
}
