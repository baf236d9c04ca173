package app.ramkeeper.upkeep;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.identity.ForRegister;
import java.sql.Date;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes last days that an office states without a report, and works out the due dates anew; a batch at a time. */
@Service
@ForRegister
@Transactional
public class StatedDates {

    private final JdbcClient jdbc;
    private final Recompute recompute;

    StatedDates(JdbcClient jdbc, Recompute recompute) {
        this.jdbc = jdbc;
        this.recompute = recompute;
    }

    /**
     * A last day of a kind of task at an install; of a battery it is said of every pump.
     *
     * @param kind the kind's code
     */
    public record Stated(InstallId install, String kind, LocalDate on) {}

    public void state(List<Stated> days) {
        if (days.isEmpty()) {
            return;
        }
        jdbc.sql("""
                        update service_tasks t set stated_on = d.stated_on, stated_about = false, version = t.version + 1
                        from unnest(:installs::uuid[], :kinds::text[], :days::date[]) as d(install_id, code, stated_on)
                          join task_kinds k on k.code = d.code
                        where t.install_id = d.install_id and t.task_kind_id = k.id and t.ended_on is null""")
                .param("installs", days.stream().map(d -> d.install().value()).toArray(UUID[]::new))
                .param("kinds", days.stream().map(Stated::kind).toArray(String[]::new))
                .param("days", days.stream().map(d -> Date.valueOf(d.on())).toArray(Date[]::new))
                .update();
        Set<UUID> installs = days.stream().map(d -> d.install().value()).collect(Collectors.toSet());
        recompute.installs(installs);
    }
}
