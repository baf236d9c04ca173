package app.ramkeeper.visits;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads what reports say of tasks and fitted parts. */
@Repository
class WorkQueries {

    private final JdbcClient jdbc;

    WorkQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<WorkDone> worksOf(InstallId install) {
        return jdbc.sql("""
                        select w.*, r.attended_on from report_works w join current_reports r on r.id = w.report_id
                        where w.install_id = :id order by r.attended_on, r.recorded_at""")
                .param("id", install.value())
                .query((row, n) -> work(row))
                .list();
    }

    List<WorkDone> worksIn(ReportId report) {
        return jdbc.sql("select w.*, r.attended_on from report_works w join visit_reports r on r.id = w.report_id"
                        + " where w.report_id = :id")
                .param("id", report.value())
                .query((row, n) -> work(row))
                .list();
    }

    List<PartFitted> partsFitted(InstallId install) {
        return jdbc.sql("""
                        select p.*, r.attended_on from parts_used p join current_reports r on r.id = p.report_id
                        where p.install_id = :id and p.part_id is not null order by r.attended_on, r.recorded_at""")
                .param("id", install.value())
                .query((row, n) -> part(row))
                .list();
    }

    List<PartFitted> partsIn(ReportId report) {
        return jdbc.sql("select p.*, r.attended_on from parts_used p join visit_reports r on r.id = p.report_id"
                        + " where p.report_id = :id and p.part_id is not null")
                .param("id", report.value())
                .query((row, n) -> part(row))
                .list();
    }

    private static WorkDone work(ResultSet row) throws SQLException {
        UUID pump = row.getObject("pump_id", UUID.class);
        String reason = row.getString("reason");
        return new WorkDone(
                new ReportId(row.getObject("report_id", UUID.class)),
                row.getObject("attended_on", LocalDate.class),
                new InstallId(row.getObject("install_id", UUID.class)),
                pump == null ? null : new PumpId(pump),
                new TaskKindId(row.getObject("task_kind_id", UUID.class)),
                row.getObject("task_id", UUID.class),
                WorkOutcome.valueOf(row.getString("outcome")),
                reason == null ? null : Reason.valueOf(reason),
                row.getObject("look_again_on", LocalDate.class),
                DoneBy.valueOf(row.getString("done_by")),
                row.getBoolean("about"),
                row.getString("note"));
    }

    private static PartFitted part(ResultSet row) throws SQLException {
        UUID pump = row.getObject("pump_id", UUID.class);
        @Nullable String position = row.getString("position");
        return new PartFitted(
                new ReportId(row.getObject("report_id", UUID.class)),
                row.getObject("attended_on", LocalDate.class),
                new InstallId(row.getObject("install_id", UUID.class)),
                pump == null ? null : new PumpId(pump),
                new PartId(row.getObject("part_id", UUID.class)),
                position == null ? null : ComponentPosition.valueOf(position));
    }
}
