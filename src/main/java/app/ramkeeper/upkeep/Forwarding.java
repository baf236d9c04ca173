package app.ramkeeper.upkeep;

import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Brings dates forward for many tasks in one statement; the dates themselves are worked out afterwards. */
@Repository
class Forwarding {

    private final JdbcClient jdbc;
    private final JdbcTemplate batch;

    Forwarding(JdbcClient jdbc, JdbcTemplate batch) {
        this.jdbc = jdbc;
        this.batch = batch;
    }

    /** After a change of layout or setting: kinds to which it matters are due within their days. */
    void configurationChanged(UUID install, LocalDate from) {
        jdbc.sql("""
                        update service_tasks t
                        set brought_forward_to = cast(:since as date) + k.after_change_days, brought_forward_since = :since,
                            brought_forward_reason = 'The configuration was changed'
                        from task_kinds k
                        where k.id = t.task_kind_id and k.after_change_days is not null and t.install_id = :install
                          and t.ended_on is null
                          and (t.brought_forward_since is null or t.brought_forward_since <= coalesce(t.last_done_on, '-infinity')
                               or t.brought_forward_to > cast(:since as date) + k.after_change_days)""").param("install", install).param("since", from).update();
    }

    /** Makes an event's task where an install has none yet. */
    void createMissing(UUID kind, Collection<UUID> installs) {
        List<UUID> missing = jdbc.sql("""
                        select i.id from installs i where i.id = any(?)
                        and not exists (select from service_tasks t where t.install_id = i.id and t.task_kind_id = ? and t.pump_id is null)
                        order by i.id for no key update of i""")
                .params(installs.toArray(UUID[]::new), kind)
                .query(UUID.class)
                .list();
        List<Object[]> rows = new ArrayList<>();
        missing.forEach(install -> rows.add(new Object[] {Uuids.next(), install, kind}));
        batch.batchUpdate(
                "insert into service_tasks (id, install_id, task_kind_id, last_done_as) values (?, ?, ?, 'UNKNOWN')",
                rows);
    }

    /** An event of a day: these installs' tasks of the kind are due by a day, unless they are sooner for another reason. */
    int bring(UUID kind, Collection<UUID> installs, LocalDate since, LocalDate due, String reason) {
        return jdbc.sql("""
                        update service_tasks t
                        set brought_forward_to = case when open_before then least(t.brought_forward_to, :due) else :due end,
                            brought_forward_since = greatest(:since, case when open_before then t.brought_forward_since end),
                            brought_forward_reason = :reason, ended_on = null
                        from (select id, brought_forward_since is not null
                                and brought_forward_since > coalesce(last_done_on, '-infinity') as open_before
                              from service_tasks where task_kind_id = :kind and install_id = any(:installs)) b
                        where b.id = t.id""")
                .param("kind", kind)
                .param("installs", installs.toArray(UUID[]::new))
                .param("since", since)
                .param("due", due)
                .param("reason", reason)
                .update();
    }
}
