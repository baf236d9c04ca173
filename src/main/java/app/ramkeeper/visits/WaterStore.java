package app.ramkeeper.visits;

import app.ramkeeper.shared.Uuids;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Writes samples with their results, and hygiene records. */
@Repository
class WaterStore {

    private static final String FIELDS =
            "reference = :reference, place = :place, taken_on = :on, taken_time = :time, taken_by = :by, laboratory = :laboratory, remark = :remark, next_on = :next";

    private final JdbcClient jdbc;

    WaterStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Writes what a report says of water. */
    void keep(RecordVisit report) {
        WaterCare water = report.water();
        if (water != null) {
            water.samples().forEach(sample -> insert(report.id(), sample));
            keep(report.id(), water.hygiene());
        }
    }

    /** A correction takes over the samples, and the hygiene record unless it brings its own. */
    void carry(ReportId old, RecordVisit corrected) {
        move("water_samples", old, corrected.id());
        if (corrected.water() == null || corrected.water().hygiene() == null) {
            move("hygiene_records", old, corrected.id());
        }
    }

    private void move(String table, ReportId from, ReportId to) {
        jdbc.sql("update " + table + " set report_id = :to where report_id = :from")
                .param("to", to.value())
                .param("from", from.value())
                .update();
    }

    void insert(ReportId report, WaterCare.Sample sample) {
        UUID id = Uuids.next();
        fill(jdbc.sql("""
                        insert into water_samples (id, report_id, reference, place, taken_on, taken_time, taken_by, laboratory, remark, next_on)
                        values (:id, :report, :reference, :place, :on, :time, :by, :laboratory, :remark, :next)"""), sample)
                .param("id", id)
                .param("report", report.value())
                .update();
        insert(id, sample.results());
    }

    /** Changes a sample; false if it was changed since that version. */
    boolean update(UUID id, int version, WaterCare.Sample sample) {
        int changed = fill(
                        jdbc.sql("update water_samples set " + FIELDS
                                + ", version = version + 1 where id = :id and version = :version"),
                        sample)
                .param("id", id)
                .param("version", version)
                .update();
        if (changed == 1) {
            jdbc.sql("delete from water_results where sample_id = :id")
                    .param("id", id)
                    .update();
            insert(id, sample.results());
        }
        return changed == 1;
    }

    private static JdbcClient.StatementSpec fill(JdbcClient.StatementSpec sql, WaterCare.Sample s) {
        return sql.param("reference", s.reference())
                .param("place", s.place())
                .param("on", s.takenOn())
                .param("time", s.takenTime())
                .param("by", s.takenBy())
                .param("laboratory", s.laboratory())
                .param("remark", s.remark())
                .param("next", s.nextOn());
    }

    private void insert(UUID sample, List<WaterCare.Result> results) {
        for (int i = 0; i < results.size(); i++) {
            WaterCare.Result result = results.get(i);
            jdbc.sql(
                            "insert into water_results (sample_id, seq, parameter, value, unit) values (:sample, :seq, :parameter, :value, :unit)")
                    .param("sample", sample)
                    .param("seq", i + 1)
                    .param("parameter", result.parameter())
                    .param("value", result.value())
                    .param("unit", result.unit())
                    .update();
        }
    }

    /** Writes the hygiene record of a report that has none. */
    void keep(ReportId report, WaterCare.@Nullable Hygiene hygiene) {
        if (hygiene != null) {
            jdbc.sql("""
                            insert into hygiene_records (report_id, product, strength, contact_minutes, flushed, isolated, not_isolated, cleaned)
                            values (:report, :product, :strength, :minutes, :flushed, :isolated, :why, :cleaned)""")
                    .param("report", report.value())
                    .param("product", hygiene.product())
                    .param("strength", hygiene.strength())
                    .param("minutes", hygiene.contactMinutes())
                    .param("flushed", hygiene.flushed())
                    .param("isolated", hygiene.isolated())
                    .param("why", hygiene.notIsolated())
                    .param("cleaned", hygiene.cleaned())
                    .update();
        }
    }
}
