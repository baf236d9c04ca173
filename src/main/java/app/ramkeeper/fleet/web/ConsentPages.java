package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.ConsentKind;
import app.ramkeeper.identity.ForOffice;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Which consents want something soon: an answer, figures, a renewal, or their last day. */
@Controller
@ForOffice
class ConsentPages {

    private static final int USUAL_DAYS = 90, MOST_DAYS = 3650;

    private final JdbcClient jdbc;
    private final Clock clock;

    ConsentPages(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A consent with the first of its days that is to come. */
    public record Coming(
            UUID id,
            UUID siteId,
            String site,
            ConsentKind kind,
            @Nullable String number,
            LocalDate byDay,
            boolean expires,
            @Nullable String notes) {}

    @GetMapping("/consents")
    String coming(@RequestParam(required = false) @Nullable Integer within, Model model) {
        int days = within == null ? USUAL_DAYS : Math.max(0, Math.min(within, MOST_DAYS));
        model.addAttribute("within", days);
        model.addAttribute("consents", coming(LocalDate.now(clock).plusDays(days)));
        return "fleet/consents";
    }

    private List<Coming> coming(LocalDate until) {
        return jdbc.sql("""
                        select c.id, c.site_id, s.name as site, c.kind, c.number, least(c.due_on, c.expires_on) as by_day,
                          coalesce(c.expires_on < c.due_on, c.due_on is null) as expires, c.notes
                        from consents c join sites s on s.id = c.site_id
                        where c.due_on <= :until or c.expires_on <= :until
                        order by by_day, s.name, c.id limit 500""").param("until", until).query(Coming.class).list();
    }
}
