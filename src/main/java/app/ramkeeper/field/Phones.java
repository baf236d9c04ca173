package app.ramkeeper.field;

import app.ramkeeper.identity.ForOffice;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The office's view of what phones sent: which photos are still on the way, whose clock is off, who carried it in. */
@Controller
@ForOffice
class Phones {

    private final JdbcClient jdbc;

    Phones(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * One visit as it arrived.
     *
     * @param result what has become of it by now
     * @param held where it waits for the office
     */
    public record Arrival(
            UUID id,
            String site,
            String writer,
            String carrier,
            String result,
            Instant receivedAt,
            int photos,
            int arrived,
            @Nullable Long clockAheadS,
            @Nullable UUID held) {

        /** More than two minutes off. */
        public boolean clockOff() {
            return clockAheadS != null && Math.abs(clockAheadS) > 120;
        }
    }

    @GetMapping("/phones")
    String arrivals(Model model) {
        model.addAttribute("arrivals", jdbc.sql("""
                        select e.id, coalesce(s.name, '') as site, w.name as writer, c.name as carrier,
                          case when r.id is not null then 'APPLIED' when t.settled_at is not null then 'DISMISSED' else 'HELD' end as result, e.received_at, e.photos,
                          (select count(*) from field_photos p where p.entry_id = e.id)::int as arrived, e.clock_ahead_s,
                          case when r.id is null then t.id end as held
                        from field_entries e join people w on w.id = e.person_id join people c on c.id = e.carried_by
                          left join visit_reports r on r.id = e.id left join to_settle t on t.report_id = e.id
                          left join sites s on s.id = coalesce(r.site_id, t.site_id)
                        order by e.received_at desc, e.id limit 200""").query(Arrival.class).list());
        return "field/phones";
    }
}
