package app.ramkeeper.fleet;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads configurations with their baselines. */
@Component
class ConfigurationCards {

    /** Columns of configuration {@code c} and baseline {@code b}, besides id, days and reason. */
    static final String COLUMNS = """
              c.fall_m, c.lift_m, c.drive_pipe_material, c.drive_pipe_bore_mm, c.drive_pipe_length_m, c.delivery_pipe,
              c.delivery_pipe_bore_mm, c.delivery_pipe_length_m, c.valve_setting, c.design_drive_flow_l_min,
              c.design_delivered_l_min, c.vessel_precharge_bar,
              b.taken_on, b.drive_flow_si, b.delivered_flow_si, b.beat_rate_si, b.delivery_pressure_si, b.report_id
            """;

    private final JdbcClient jdbc;

    ConfigurationCards(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<ConfigurationCard> ofInstall(UUID install) {
        return jdbc.sql("select c.id as configuration_id, c.install_id, c.from_date, c.until_date, c.reason,\n"
                        + COLUMNS + """
                        from configurations c left join baselines b on b.configuration_id = c.id
                        where c.install_id = :id order by c.until_date desc nulls first""")
                .param("id", install)
                .query((rs, n) -> card(new Columns(rs)))
                .list();
    }

    static ConfigurationCard card(Columns row) throws SQLException {
        return new ConfigurationCard(
                new ConfigurationId(row.id("configuration_id")),
                new InstallId(row.id("install_id")),
                row.date("from_date"),
                row.date("until_date"),
                row.orNull("reason"),
                details(row),
                baseline(row));
    }

    private static ConfigurationDetails details(Columns row) throws SQLException {
        return new ConfigurationDetails(
                row.number("fall_m"),
                row.number("lift_m"),
                row.orNull("drive_pipe_material"),
                row.number("drive_pipe_bore_mm"),
                row.number("drive_pipe_length_m"),
                row.orNull("delivery_pipe"),
                row.number("delivery_pipe_bore_mm"),
                row.number("delivery_pipe_length_m"),
                row.orNull("valve_setting"),
                row.number("design_drive_flow_l_min"),
                row.number("design_delivered_l_min"),
                row.number("vessel_precharge_bar"));
    }

    private static @Nullable BaselineDetails baseline(Columns row) throws SQLException {
        LocalDate taken = row.date("taken_on");
        return taken == null
                ? null
                : new BaselineDetails(
                        taken,
                        row.number("drive_flow_si"),
                        row.number("delivered_flow_si"),
                        row.number("beat_rate_si"),
                        row.number("delivery_pressure_si"),
                        row.id("report_id", id -> id));
    }
}
