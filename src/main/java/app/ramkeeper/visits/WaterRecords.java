package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Water samples and hygiene of reports in force: shown, and added to when the laboratory has written. */
@Service
@ForField
@Transactional
public class WaterRecords {

    private static final String CARE = """
            select r.id, r.attended_on, h.product, h.strength, h.contact_minutes, h.flushed, h.isolated, h.not_isolated, h.cleaned,
              (select coalesce(jsonb_agg(jsonb_build_object('id', s.id, 'version', s.version, 'by', coalesce(s.taken_by, (select p.name from report_people rp
                  join people p on p.id = rp.person_id where rp.report_id = r.id and rp.lead limit 1)), 'sample', jsonb_build_object('reference', s.reference,
                  'place', s.place, 'takenOn', s.taken_on, 'takenTime', s.taken_time, 'takenBy', s.taken_by, 'laboratory', s.laboratory,
                  'remark', s.remark, 'nextOn', s.next_on, 'results', (select coalesce(jsonb_agg(jsonb_build_object('parameter', w.parameter,
                    'value', w.value, 'unit', w.unit) order by w.seq), '[]') from water_results w where w.sample_id = s.id)))
                  order by s.taken_on, s.taken_time, s.id), '[]') from water_samples s where s.report_id = r.id) as samples
            from current_reports r left join hygiene_records h on h.report_id = r.id where\s""";

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final WaterStore store;

    WaterRecords(JdbcClient jdbc, JsonMapper json, WaterStore store) {
        this.jdbc = jdbc;
        this.json = json;
        this.store = store;
    }

    /**
     * A kept sample.
     *
     * @param by who took it: as said, else who led the visit
     */
    public record Kept(UUID id, int version, @Nullable String by, WaterCare.Sample sample) {}

    /** What one report says of water. */
    public record Care(ReportId report, LocalDate on, List<Kept> samples, WaterCare.@Nullable Hygiene hygiene) {}

    /** Of a report; empty if it says nothing of water or is no longer in force. */
    @Transactional(readOnly = true)
    public Optional<Care> of(ReportId report) {
        return jdbc.sql(CARE + "r.id = :id")
                .param("id", report.value())
                .query((row, n) -> care(row))
                .optional()
                .filter(care -> !care.samples().isEmpty() || care.hygiene() != null);
    }

    /** The last ones of a site, newest first. */
    @Transactional(readOnly = true)
    public List<Care> of(SiteId site, int most) {
        return jdbc.sql(CARE + """
                        r.site_id = :site and (h.report_id is not null or exists (select 1 from water_samples x where x.report_id = r.id))
                        order by r.attended_on desc, r.id desc limit :most""")
                .param("site", site.value())
                .param("most", most)
                .query((row, n) -> care(row))
                .list();
    }

    private Care care(ResultSet row) throws SQLException {
        row.getBoolean("isolated");
        boolean none = row.wasNull();
        return new Care(
                new ReportId(row.getObject("id", UUID.class)),
                row.getObject("attended_on", LocalDate.class),
                json.readValue(row.getString("samples"), new TypeReference<List<Kept>>() {}),
                none
                        ? null
                        : new WaterCare.Hygiene(
                                row.getString("product"),
                                row.getString("strength"),
                                row.getObject("contact_minutes", Integer.class),
                                row.getString("flushed"),
                                row.getBoolean("isolated"),
                                row.getString("not_isolated"),
                                row.getString("cleaned")));
    }

    /** The report a sample hangs on, and the sample. */
    @Transactional(readOnly = true)
    public Care with(UUID sample) {
        return jdbc.sql("select report_id from water_samples where id = :id")
                .param("id", sample)
                .query(UUID.class)
                .optional()
                .flatMap(report -> of(new ReportId(report)))
                .orElseThrow(() -> new Missing("water sample", sample));
    }

    /**
     * Adds to a report in force what was found out later.
     *
     * @throws Conflict if it was corrected meanwhile, or has a hygiene record
     */
    public void add(ReportId report, WaterCare water) {
        jdbc.sql("select 1 from visit_reports where id = :id for update")
                .param("id", report.value())
                .query(Integer.class)
                .optional();
        if (jdbc.sql("select 1 from current_reports where id = :id")
                .param("id", report.value())
                .query(Integer.class)
                .optional()
                .isEmpty()) {
            throw new Conflict("This report was corrected already. Open the one in force and add it there.");
        }
        if (water.hygiene() != null
                && of(report).map(care -> care.hygiene() != null).orElse(false)) {
            throw new Conflict("Disinfection and cleaning are recorded already at this visit.");
        }
        water.samples().forEach(sample -> {
            store.insert(report, sample);
            remind(report, sample.nextOn());
        });
        store.keep(report, water.hygiene());
    }

    /** Changes a sample, such as when its results have come; false if somebody else changed it since. */
    public boolean change(UUID id, int version, WaterCare.Sample sample) {
        Care care = with(id);
        boolean changed = store.update(id, version, sample);
        if (changed) {
            remind(care.report(), sample.nextOn());
        }
        return changed;
    }

    /** The next sample is something left to do, with its day. */
    private void remind(ReportId report, @Nullable LocalDate next) {
        int moved = jdbc.sql("""
                        update follow_ups set due_on = coalesce(:next, due_on), version = version + 1
                        where report_id = :report and text = :text and done_on is null""")
                .param("next", next)
                .param("report", report.value())
                .param("text", WaterCare.NEXT_SAMPLE)
                .update();
        if (moved == 0 && next != null) {
            jdbc.sql("""
                            insert into follow_ups (id, report_id, site_id, text, due_on, promised)
                            select :id, r.id, r.site_id, :text, :next, false from visit_reports r where r.id = :report""")
                    .param("id", Uuids.next())
                    .param("text", WaterCare.NEXT_SAMPLE)
                    .param("next", next)
                    .param("report", report.value())
                    .update();
        }
    }
}
