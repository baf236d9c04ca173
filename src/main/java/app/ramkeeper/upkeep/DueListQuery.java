package app.ramkeeper.upkeep;

import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads the due list a page at a time, by key. */
@Repository
class DueListQuery {

    static final int PAGE = 50;
    static final int DOWNLOAD = 50_000;
    /** Before any real day; stands for "never" in the order by last done day. */
    private static final LocalDate NEVER = LocalDate.of(1, 1, 1);

    private static final String PLACE = "folded(s.name), s.id, folded(i.name), i.id, k.name, t.id";
    /** True of every install's site; lets the index of sites by name give the order. */
    private static final String INDEXED = " and s.merged_into is null";
    /** What stands behind the last task shown, wherever that one stands by now, or from the start if it is gone; the first line finds the site by the index. */
    private static final String AFTER = """
             and folded(s.name) >= coalesce((select folded(s.name) %1$s), '')
            and ((%2$s) > (select %2$s %1$s) or not exists (select %1$s))""".formatted("""
            from service_tasks t join task_kinds k on k.id = t.task_kind_id
              join installs i on i.id = t.install_id join sites s on s.id = i.site_id where t.id = :id""", PLACE);

    private final JdbcClient jdbc;
    private final Clock clock;

    DueListQuery(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    Slice<DueTask> page(DueFilter filter) {
        List<DueTask> rows = rows(filter, PAGE + 1);
        List<DueTask> page = rows.subList(0, Math.min(PAGE, rows.size()));
        String next = rows.size() > PAGE ? cursor(filter, page.get(PAGE - 1)) : null;
        return new Slice<>(page, next, filter.after() == null && next == null ? page.size() : count(filter));
    }

    /** All rows of the filter for a download, at most {@link #DOWNLOAD}. */
    List<DueTask> all(DueFilter filter) {
        return rows(filter, DOWNLOAD);
    }

    private long count(DueFilter filter) {
        Map<String, Object> parameters = new HashMap<>();
        String where = filter.where(LocalDate.now(clock), parameters);
        String joins = where.contains(" s.") || where.startsWith("s.")
                ? " join installs i on i.id = t.install_id join sites s on s.id = i.site_id"
                : "";
        return jdbc.sql("select count(*) from (select from service_tasks t" + joins + " where " + where + " limit "
                        + (Slice.CAP + 1) + ") c")
                .params(parameters)
                .query(Long.class)
                .single();
    }

    private List<DueTask> rows(DueFilter filter, int limit) {
        LocalDate today = LocalDate.now(clock);
        Map<String, Object> parameters = new HashMap<>();
        String where = filter.where(today, parameters) + key(filter, parameters) + (filter.byPlace() ? INDEXED : "");
        String order = filter.byPlace()
                ? PLACE
                : filter.order().column() + filter.order().direction()
                        + (filter.order() == DueFilter.DueSort.LAST_DONE ? " nulls last" : "") + ", t.id"
                        + filter.order().direction();
        parameters.put("limit", limit);
        return jdbc.sql("select " + DueTaskQuery.COLUMNS + " from service_tasks t " + DueTaskQuery.JOINS + " where "
                        + where + " order by " + order + " limit :limit")
                .params(parameters)
                .query((row, number) -> DueTaskQuery.row(row, today))
                .list();
    }

    private static String cursor(DueFilter filter, DueTask last) {
        LocalDate day = filter.order() == DueFilter.DueSort.LAST_DONE ? last.lastDoneOn() : last.dueOn();
        return Cursor.of(day == null ? NEVER : day, last.id());
    }

    private static String key(DueFilter filter, Map<String, Object> parameters) {
        Optional<List<String>> keys = Cursor.read(filter.after(), 2);
        if (keys.isEmpty()) {
            return "";
        }
        LocalDate day;
        try {
            day = LocalDate.parse(keys.get().get(0));
            parameters.put("id", UUID.fromString(keys.get().get(1)));
        } catch (DateTimeParseException | IllegalArgumentException broken) {
            return "";
        }
        if (filter.byPlace()) {
            return AFTER;
        }
        parameters.put("day", day);
        String column = filter.order().column();
        if (filter.order() == DueFilter.DueSort.LAST_DONE) {
            return day.equals(NEVER)
                    ? " and t.last_done_on is null and t.id > :id"
                    : " and ((t.last_done_on, t.id) > (:day, :id) or t.last_done_on is null)";
        }
        return " and (" + column + ", t.id) " + (filter.order() == DueFilter.DueSort.DUE ? ">" : "<") + " (:day, :id)";
    }
}
