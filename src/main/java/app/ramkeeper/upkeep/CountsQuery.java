package app.ramkeeper.upkeep;

import app.ramkeeper.web.Slice;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Counts tasks for the first pages. */
@Repository
class CountsQuery {

    /** Ours, at work, awake on a day. */
    static final String AWAKE = """
            t.ended_on is null and t.done_by = 'US'
            and (t.asleep_since is null or t.asleep_since > :today or t.wakes_on <= :today)""";

    private final JdbcClient jdbc;
    private final Clock clock;

    CountsQuery(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<OverdueCount> overdueByKind() {
        return jdbc.sql("""
                        select k.id, k.name, k.watched, o.* from task_kinds k
                        join (select task_kind_id,
                                     count(*) filter (where waiting = 'OURS') as ours,
                                     count(*) filter (where waiting = 'CANNOT_REACH') as cannot_reach,
                                     count(*) filter (where waiting = 'REFUSED') as refused,
                                     count(*) filter (where waiting = 'PARTS') as parts
                              from service_tasks t
                              where t.due_on < :today and t.window_until < :today and
                        """ + AWAKE + """
                              group by task_kind_id) o on o.task_kind_id = k.id
                        order by k.watched desc, k.name""")
                .param("today", LocalDate.now(clock))
                .query((row, number) -> new OverdueCount(
                        row.getObject("id", UUID.class),
                        row.getString("name"),
                        row.getBoolean("watched"),
                        row.getLong("ours"),
                        row.getLong("cannot_reach"),
                        row.getLong("refused"),
                        row.getLong("parts")))
                .list();
    }

    DueCounts dueThisWeek() {
        LocalDate today = LocalDate.now(clock);
        return new DueCounts(
                count("t.due_on < :today and t.window_until < :today", today),
                count("t.due_on <= :today and t.window_until >= :today", today),
                count("t.due_on > :today and t.due_on <= cast(:today as date) + 7", today),
                count("t.due_on is null and t.last_done_as = 'UNKNOWN'", today));
    }

    private long count(String condition, LocalDate today) {
        return jdbc.sql("select count(*) from (select from service_tasks t where " + condition + " and " + AWAKE
                        + " limit " + (Slice.CAP + 1) + ") capped")
                .param("today", today)
                .query(Long.class)
                .single();
    }
}
