package app.ramkeeper.upkeep;

import app.ramkeeper.shared.Uuids;
import app.ramkeeper.upkeep.Places.Existing;
import app.ramkeeper.upkeep.Places.Place;
import app.ramkeeper.upkeep.Places.Standing;
import app.ramkeeper.upkeep.Places.Wanted;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads installs as far as their tasks go, and makes, moves and ends tasks. */
@Repository
class PlaceStore {

    private final JdbcClient jdbc;
    private final JdbcTemplate batch;

    PlaceStore(JdbcClient jdbc, JdbcTemplate batch) {
        this.jdbc = jdbc;
        this.batch = batch;
    }

    /** The installs, each held until the transaction ends, so that no task is made twice. */
    List<Place> places(Collection<UUID> installs) {
        Map<UUID, List<Standing>> pumps = pumps(installs);
        return jdbc.sql("""
                        select i.id, s.drinking_water, s.water_class, i.commissioned_on, i.taken_over_on,
                               i.retired_on is null as working, i.commissioned_on is null and i.commissioning_known as planned,
                               exists (select from pump_fittings f where f.install_id = i.id) as pumped
                        from installs i join sites s on s.id = i.site_id
                        where i.id = any(?) order by i.id for no key update of i""")
                .param(installs.toArray(UUID[]::new))
                .query((row, number) -> {
                    UUID id = row.getObject("id", UUID.class);
                    LocalDate since = row.getObject("commissioned_on", LocalDate.class);
                    List<Standing> standing = pumps.getOrDefault(id, List.of()).stream()
                            .map(pump -> new Standing(
                                    pump.pump(),
                                    pump.model(),
                                    pump.takenOverOn(),
                                    pump.countingFrom() == null ? since : pump.countingFrom()))
                            .toList();
                    return new Place(
                            id,
                            row.getBoolean("working"),
                            row.getBoolean("planned"),
                            row.getBoolean("drinking_water"),
                            row.getString("water_class"),
                            since,
                            date(row, "taken_over_on"),
                            row.getBoolean("pumped"),
                            standing);
                })
                .list();
    }

    /** Pumps that stand there now; each counts from the first day it was fitted anywhere, if that is known. */
    private Map<UUID, List<Standing>> pumps(Collection<UUID> installs) {
        Map<UUID, List<Standing>> pumps = new HashMap<>();
        jdbc.sql("""
                        select f.install_id, f.pump_id, p.model_id,
                               (select max(i.taken_over_on) from pump_fittings e join installs i on i.id = e.install_id
                                where e.pump_id = f.pump_id) as taken_over_on,
                               (select case when bool_or(e.from_date is null) then null else min(e.from_date) end
                                from pump_fittings e where e.pump_id = f.pump_id and e.install_id is not null) as counting_from
                        from pump_fittings f join pumps p on p.id = f.pump_id where f.install_id = any(?) and f.until_date is null
                        order by f.install_id, f.place_no""").param(installs.toArray(UUID[]::new)).query(row -> {
            pumps.computeIfAbsent(row.getObject("install_id", UUID.class), install -> new ArrayList<>())
                    .add(new Standing(
                            row.getObject("pump_id", UUID.class),
                            row.getObject("model_id", UUID.class),
                            date(row, "taken_over_on"),
                            date(row, "counting_from")));
        });
        return pumps;
    }

    Map<UUID, List<Existing>> existing(Collection<UUID> installs) {
        Map<UUID, List<Existing>> existing = new HashMap<>();
        jdbc.sql("""
                        select id, install_id, pump_id, task_kind_id, counting_from, ended_on is not null as ended
                        from service_tasks where install_id = any(?) order by ended_on nulls first, id""").param(installs.toArray(UUID[]::new)).query(row -> {
            UUID install = row.getObject("install_id", UUID.class);
            existing.computeIfAbsent(install, id -> new ArrayList<>())
                    .add(new Existing(
                            row.getObject("id", UUID.class),
                            install,
                            row.getObject("pump_id", UUID.class),
                            row.getObject("task_kind_id", UUID.class),
                            date(row, "counting_from"),
                            row.getBoolean("ended")));
        });
        return existing;
    }

    List<UUID> installsAfter(UUID after, int limit) {
        return jdbc.sql("select id from installs where id > ? order by id limit ?")
                .params(after, limit)
                .query(UUID.class)
                .list();
    }

    void create(List<Wanted> wanted) {
        batch.batchUpdate("""
                insert into service_tasks (id, install_id, pump_id, task_kind_id, counting_from, last_done_as)
                values (?, ?, ?, ?, ?, ?)""", wanted, 1000, (statement, task) -> {
            statement.setObject(1, Uuids.next());
            statement.setObject(2, task.install());
            statement.setObject(3, task.pump());
            statement.setObject(4, task.kind());
            statement.setObject(5, task.countingFrom());
            statement.setString(6, task.countingFrom() == null ? "UNKNOWN" : "NEVER");
        });
    }

    /** Gives tasks their places. A last day that was stated of a pump goes where the pump goes, and stays behind with no other. */
    void place(Map<Existing, Wanted> changed) {
        batch.batchUpdate("""
                update service_tasks t set pump_id = w.pump_id, counting_from = w.counting_from, ended_on = null,
                  stated_on = case when keeps then t.stated_on else s.stated_on end,
                  stated_about = case when keeps then t.stated_about else coalesce(s.stated_about, false) end
                from (select ?::uuid as pump_id, ?::date as counting_from, ?::uuid as id) w
                  join service_tasks x on x.id = w.id
                  cross join lateral (select x.pump_id is null or x.pump_id is not distinct from w.pump_id as keeps) k
                  left join lateral (select o.stated_on, o.stated_about from service_tasks o
                    where o.pump_id = w.pump_id and o.task_kind_id = x.task_kind_id and o.stated_on is not null
                    order by o.stated_on desc limit 1) s on true
                where t.id = w.id""", changed.entrySet(), 1000, (statement, entry) -> {
            statement.setObject(1, entry.getValue().pump());
            statement.setObject(2, entry.getValue().countingFrom());
            statement.setObject(3, entry.getKey().id());
        });
    }

    void end(List<Existing> tasks, LocalDate on) {
        batch.batchUpdate("update service_tasks set ended_on = ? where id = ?", tasks, 1000, (statement, task) -> {
            statement.setObject(1, on);
            statement.setObject(2, task.id());
        });
    }

    private static @Nullable LocalDate date(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }
}
