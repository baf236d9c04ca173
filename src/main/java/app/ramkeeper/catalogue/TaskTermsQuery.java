package app.ramkeeper.catalogue;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads what sets due dates. */
@Repository
class TaskTermsQuery {

    private final JdbcClient jdbc;

    TaskTermsQuery(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Map<UUID, TaskTerms> all() {
        Map<UUID, Map<UUID, Interval>> models = new HashMap<>();
        jdbc.sql("select task_kind_id, model_id, interval_months, interval_days from task_intervals")
                .query(row -> {
                    models.computeIfAbsent(row.getObject(1, UUID.class), kind -> new HashMap<>())
                            .put(row.getObject(2, UUID.class), new Interval(row.getInt(3), row.getInt(4)));
                });
        Map<UUID, Map<String, BigDecimal>> waters = new HashMap<>();
        jdbc.sql("select task_kind_id, water_class, factor from water_factors").query(row -> {
            waters.computeIfAbsent(row.getObject(1, UUID.class), kind -> new HashMap<>())
                    .put(row.getString(2), row.getBigDecimal(3));
        });
        Map<UUID, TaskTerms> all = new LinkedHashMap<>();
        jdbc.sql("select * from task_kinds order by name").query(row -> {
            UUID id = row.getObject("id", UUID.class);
            all.put(id, terms(row, id, models.getOrDefault(id, Map.of()), waters.getOrDefault(id, Map.of())));
        });
        return all;
    }

    private static TaskTerms terms(ResultSet row, UUID id, Map<UUID, Interval> byModel, Map<String, BigDecimal> byWater)
            throws SQLException {
        int month = row.getInt("season_month");
        return new TaskTerms(
                new TaskKindId(id),
                row.getString("code"),
                row.getString("name"),
                Scope.valueOf(row.getString("scope")),
                Schedule.valueOf(row.getString("schedule")),
                new Interval(row.getInt("interval_months"), row.getInt("interval_days")),
                Life.valueOf(row.getString("life")),
                row.getInt("early_days"),
                row.getInt("late_days"),
                row.getInt("grace_days"),
                row.getObject("after_change_days", Integer.class),
                month == 0 ? null : MonthDay.of(month, row.getInt("season_day")),
                row.getBoolean("drinking_water"),
                row.getBoolean("watched"),
                row.getObject("withdrawn_on", LocalDate.class),
                byModel,
                byWater);
    }

    /** For each kind, itself and all that include it, over any number of steps. */
    Map<UUID, Set<UUID>> includers() {
        Map<UUID, Set<UUID>> includers = new HashMap<>();
        jdbc.sql("""
                        with recursive reach(included_id, includer_id) as (
                          select id, id from task_kinds
                          union
                          select reach.included_id, i.task_kind_id
                          from reach join task_kind_includes i on i.included_id = reach.includer_id)
                        select included_id, includer_id from reach""").query(row -> {
            includers
                    .computeIfAbsent(row.getObject(1, UUID.class), kind -> new HashSet<>())
                    .add(row.getObject(2, UUID.class));
        });
        return includers;
    }
}
