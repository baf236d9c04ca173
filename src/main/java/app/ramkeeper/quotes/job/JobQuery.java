package app.ramkeeper.quotes.job;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.catalogue.Schedule;
import app.ramkeeper.catalogue.TaskTerms;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Missing;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reads jobs. */
@Service
@ForOffice
@Transactional(readOnly = true)
public class JobQuery {

    /**
     * A job as its list shows it, with what was promised and what is measured, l/day.
     *
     * @param promisedLow dry-month range of the design
     * @param baseline delivered at commissioning
     * @param latest delivered at the newest comparable reading
     */
    public record Line(
            UUID id,
            String number,
            String title,
            String site,
            int phases,
            int done,
            boolean held,
            @Nullable LocalDate nextOn,
            @Nullable LocalDate commissionedOn,
            @Nullable Double promisedLow,
            @Nullable Double promisedHigh,
            @Nullable Double baseline,
            @Nullable Double latest,
            @Nullable LocalDate latestOn,
            long uninvoiced) {

        /** In words: within the range, under it, over it; nothing while there is no reading. */
        public @Nullable String verdict() {
            Double measured = latest != null ? latest : baseline;
            if (measured == null || promisedLow == null || promisedHigh == null) {
                return null;
            }
            return measured < promisedLow ? "under" : measured > promisedHigh ? "over" : "within";
        }
    }

    private static final double DAY = 86_400_000;

    private final JdbcClient jdbc;
    private final Catalogue catalogue;

    JobQuery(JdbcClient jdbc, Catalogue catalogue) {
        this.jdbc = jdbc;
        this.catalogue = catalogue;
    }

    /** All jobs, open ones first, newest first. */
    public List<Line> list() {
        return jdbc.sql("""
                        select j.id, q.number, q.title, s.name as site,
                          (select count(*) from job_phases p where p.job_id = j.id) as phases,
                          (select count(*) from job_phases p where p.job_id = j.id and p.done_on is not null) as done,
                          exists (select 1 from job_phases p where p.job_id = j.id and p.held_since is not null and p.done_on is null) as held,
                          (select min(p.from_date) from job_phases p where p.job_id = j.id and p.done_on is null) as next_on,
                          i.commissioned_on,
                          (r.design #>> '{perDay,p10}')::double precision as promised_low,
                          (r.design #>> '{perDay,p90}')::double precision as promised_high,
                          (select b.delivered_flow_si * :day from baselines b join configurations c on c.id = b.configuration_id
                           where c.install_id = i.id order by b.taken_on desc limit 1) as baseline,
                          last.value_si * :day as latest, last.attended_on as latest_on,
                          (select count(*) from billing_items b where b.job_id = j.id and b.ready_on is not null and b.export_id is null) as uninvoiced
                        from jobs j join quotes q on q.id = j.id join sites s on s.id = j.site_id
                        join quote_revisions r on r.quote_id = j.id and r.revision = j.revision
                        left join installs i on i.id = j.install_id
                        left join lateral (select g.value_si, v.attended_on from readings g join current_reports v on v.id = g.report_id
                          where g.install_id = i.id and g.quantity = 'DELIVERED_FLOW' and g.comparable
                          order by v.attended_on desc limit 1) last on true
                        order by j.ended_on is not null, j.at desc limit 500""").param("day", DAY).query(Line.class).list();
    }

    /** A job with all that hangs on it. */
    public JobView job(JobId id) {
        JobView.Head head = jdbc.sql("""
                        select j.id, q.number, q.title, j.revision, c.name as customer, c.id as customer_id, s.name as site, s.id as site_id,
                          j.install_id, i.commissioned_on, j.installation_visit, a.planned_on as installation_on, j.commissioning_visit,
                          b.planned_on as commissioning_on, r.currency
                        from jobs j join quotes q on q.id = j.id join customers c on c.id = j.customer_id join sites s on s.id = j.site_id
                        join quote_revisions r on r.quote_id = j.id and r.revision = j.revision
                        left join installs i on i.id = j.install_id join visits a on a.id = j.installation_visit
                        left join visits b on b.id = j.commissioning_visit where j.id = ?""")
                .param(id.value())
                .query(JobView.Head.class)
                .optional()
                .orElseThrow(() -> new Missing("job", id));
        return new JobView(head, phases(id), certificates(id), variations(id), items(id), services(id));
    }

    private List<JobView.Phase> phases(JobId id) {
        return jdbc.sql("""
                        select p.*, (select string_agg(n.name, ', ' order by n.name) from phase_people w join people n on n.id = w.person_id
                                     where w.phase_id = p.id) as people
                        from job_phases p where job_id = ? order by position""").param(id.value()).query(JobView.Phase.class).list();
    }

    private List<JobView.Certificate> certificates(JobId id) {
        return jdbc.sql("select * from job_certificates where job_id = ? order by expires_on nulls last, holder")
                .param(id.value())
                .query(JobView.Certificate.class)
                .list();
    }

    private List<JobView.Variation> variations(JobId id) {
        return jdbc.sql("select * from job_variations where job_id = ? order by number")
                .param(id.value())
                .query(JobView.Variation.class)
                .list();
    }

    private List<JobView.Item> items(JobId id) {
        return jdbc.sql("select *, export_id is not null as exported from billing_items where job_id = ?"
                        + " order by array_position(array['DEPOSIT','STAGE','VARIATION','FINAL'], kind), reference")
                .param(id.value())
                .query(JobView.Item.class)
                .list();
    }

    /** The install's service tasks at the intervals of the quoted pump in this water. */
    private List<JobView.Service> services(JobId id) {
        Map<UUID, TaskTerms> terms = catalogue.terms();
        return jdbc.sql("""
                        select distinct on (k.name) t.id, k.id as kind, k.name, t.interval_months, t.interval_days, t.due_on, s.water_class,
                          (r.design ->> 'pumpModelId')::uuid as model
                        from jobs j join quote_revisions r on r.quote_id = j.id and r.revision = j.revision
                        join service_tasks t on t.install_id = j.install_id and t.ended_on is null
                        join task_kinds k on k.id = t.task_kind_id join sites s on s.id = j.site_id
                        where j.id = ? order by k.name, t.due_on""")
                .param(id.value())
                .query((row, number) -> {
                    Integer months = row.getObject("interval_months", Integer.class);
                    TaskTerms kind = Objects.requireNonNull(terms.get(row.getObject("kind", UUID.class)));
                    Interval every = months != null
                            ? new Interval(months, row.getInt("interval_days"))
                            : kind.intervalFor(row.getObject("model", UUID.class), row.getString("water_class"));
                    return new JobView.Service(
                            row.getObject("id", UUID.class),
                            row.getString("name"),
                            kind.schedule() == Schedule.SEASON ? "each year" : every.words(),
                            row.getObject("due_on", LocalDate.class));
                })
                .list();
    }

    /** What to take along: the things on the accepted quote, without labour and travel. */
    public List<Pick> pickList(JobId id) {
        return jdbc.sql("""
                        select l.line_group, l.text, l.note, l.quantity, l.unit from quote_lines l
                        join quote_revisions r on r.id = l.revision_id join jobs j on j.id = r.quote_id and j.revision = r.revision
                        where j.id = ? and l.line_group not in ('LABOUR', 'TRAVEL') order by l.position""").param(id.value()).query(Pick.class).list();
    }

    /** One thing to take along. */
    public record Pick(
            String lineGroup, String text, @Nullable String note, BigDecimal quantity, String unit) {}
}
