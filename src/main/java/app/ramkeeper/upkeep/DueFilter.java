package app.ramkeeper.upkeep;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.format.annotation.DateTimeFormat.ISO;

/**
 * What the due list shows, as it stands in the address.
 *
 * @param kind one kind of task
 * @param state how the task stands today; absent: every open task with a date
 * @param waiting whose delay it is
 * @param from first due date
 * @param to last due date
 * @param depot of the site
 * @param customer who plays any part at the site today: an id, or part of a name
 * @param water class of the site's water
 * @param agreement yes or no: covered by a service agreement today
 * @param box south,west,north,east in degrees
 * @param sort due, due-last, or last (longest not done first)
 * @param after cursor
 */
public record DueFilter(
        @Nullable UUID kind,
        @Nullable DueState state,
        app.ramkeeper.upkeep.rules.@Nullable Waiting waiting,
        @DateTimeFormat(iso = ISO.DATE) @Nullable LocalDate from,
        @DateTimeFormat(iso = ISO.DATE) @Nullable LocalDate to,
        @Nullable UUID depot,
        @Nullable String customer,
        @Nullable String water,
        @Nullable Boolean agreement,
        @Nullable String box,
        @Nullable DueSort sort,
        @Nullable String after) {

    private static final Pattern ID = Pattern.compile("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");

    /** How tasks can be asked for; each is a condition that an index answers. */
    public enum DueState {
        /** Its window ends with this week, or has ended, and it does not wait for the customer. */
        PRESSING("t.due_on <= :today::date + 7 - extract(isodow from :today::date)::int"
                + " and t.window_until <= :today::date + 7 - extract(isodow from :today::date)::int"
                + " and t.waiting in ('OURS', 'PARTS')"),
        OVERDUE("t.due_on < :today and t.window_until < :today"),
        DUE("t.due_on <= :today and t.window_until >= :today"),
        EARLY("t.due_on > :today and t.window_from <= :today"),
        LATER("t.due_on > :today and t.window_from > :today"),
        UNKNOWN("t.due_on is null and t.last_done_as = 'UNKNOWN'"),
        ASLEEP(null),
        BY_OWNER(null),
        DECLINED(null);

        private final @Nullable String awake;

        DueState(@Nullable String awake) {
            this.awake = awake;
        }

        String condition() {
            if (awake != null) {
                return CountsQuery.AWAKE + " and " + awake;
            }
            return this == ASLEEP
                    ? "t.ended_on is null and t.done_by = 'US' and t.asleep_since <= :today and (t.wakes_on is null or t.wakes_on > :today)"
                    : "t.ended_on is null and t.done_by = '" + (this == BY_OWNER ? "OWNER" : "DECLINED") + "'";
        }
    }

    /** Allowed orders. */
    public enum DueSort {
        DUE("t.due_on", ""),
        LATEST("t.due_on", " desc"),
        LAST_DONE("t.last_done_on", "");

        private final String column;
        private final String direction;

        DueSort(String column, String direction) {
            this.column = column;
            this.direction = direction;
        }

        String column() {
            return column;
        }

        String direction() {
            return direction;
        }
    }

    private static final String PLAYED_BY = """
            s.id in (select sp.site_id from site_parties sp join customers c on c.id = sp.customer_id where %s
              and (sp.from_date is null or sp.from_date <= :today) and (sp.until_date is null or sp.until_date > :today))""";

    /** The customer if it is given by id. */
    @Nullable
    UUID customerId() {
        return customer == null || !ID.matcher(customer).matches() ? null : UUID.fromString(customer);
    }

    DueSort order() {
        return sort == null ? DueSort.DUE : sort;
    }

    /** Tasks without a due date of ours stand by site, install and kind, whatever order was asked for. */
    boolean byPlace() {
        return state == DueState.UNKNOWN
                || ((state == DueState.BY_OWNER || state == DueState.DECLINED || state == DueState.ASLEEP));
    }

    /** Filters that no task can fit because of how they were written, by field, with the key of what to say. */
    Map<String, String> wrong() {
        Map<String, String> wrong = new HashMap<>();
        if (box != null && edges() == null) {
            wrong.put("box", "due.wrong.box");
        }
        if (from != null && to != null && to.isBefore(from)) {
            wrong.put("to", "due.wrong.to");
        }
        return wrong;
    }

    /** The four edges of the map box, or null if it is not one. */
    double @Nullable [] edges() {
        if (box == null) {
            return null;
        }
        try {
            String[] parts = box.split(",", -1);
            double[] edges = new double[4];
            for (int i = 0; i < 4; i++) {
                edges[i] = Double.parseDouble(parts[i].strip());
            }
            return parts.length == 4 && edges[0] < edges[2] && edges[1] < edges[3] ? edges : null;
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException broken) {
            return null;
        }
    }

    /** The conditions of the filter, without the cursor; parameters go into the map. */
    String where(LocalDate today, Map<String, Object> parameters) {
        List<String> all = new ArrayList<>();
        parameters.put("today", today);
        all.add(state == null ? CountsQuery.AWAKE + " and t.due_on is not null" : state.condition());
        add(all, parameters, "t.task_kind_id = :kind", "kind", kind);
        add(all, parameters, "t.waiting = :waiting", "waiting", waiting == null ? null : waiting.name());
        add(all, parameters, "t.due_on >= :from", "from", from);
        add(all, parameters, "t.due_on <= :to", "to", to);
        add(all, parameters, "s.depot_id = :depot", "depot", depot);
        add(all, parameters, "s.water_class = :water", "water", water);
        UUID id = customerId();
        add(all, parameters, PLAYED_BY.formatted("sp.customer_id = :customerId"), "customerId", id);
        add(
                all,
                parameters,
                PLAYED_BY.formatted("folded(c.name) like '%' || folded(:customer) || '%' escape '!'"),
                "customer",
                id == null && customer != null ? customer.replaceAll("([!%_])", "!$1") : null);
        if (agreement != null) {
            all.add((agreement ? "" : "not ") + """
                    exists (select from agreement_installs ai join agreements a on a.id = ai.agreement_id
                      where ai.install_id = t.install_id and a.from_date <= :today and (a.until_date is null or a.until_date > :today)
                        and (ai.until_date is null or ai.until_date > :today))""");
        }
        double[] edges = edges();
        if (edges != null) {
            all.add("s.latitude between :south and :north and s.longitude between :west and :east");
            List<String> names = List.of("south", "west", "north", "east");
            for (int i = 0; i < 4; i++) {
                parameters.put(names.get(i), edges[i]);
            }
        }
        return String.join(" and ", all);
    }

    private static void add(
            List<String> all, Map<String, Object> parameters, String condition, String name, @Nullable Object value) {
        if (value != null) {
            all.add(condition);
            parameters.put(name, value);
        }
    }

    /** The filter as words of the address, without the cursor; for links to the next page and the download. */
    public Map<String, Object> words() {
        Map<String, Object> words = new HashMap<>();
        put(words, "kind", kind);
        put(words, "state", state);
        put(words, "waiting", waiting);
        put(words, "from", from);
        put(words, "to", to);
        put(words, "depot", depot);
        put(words, "customer", customer);
        put(words, "water", water);
        put(words, "agreement", agreement);
        put(words, "box", box);
        put(words, "sort", sort);
        return words;
    }

    private static void put(Map<String, Object> words, String name, @Nullable Object value) {
        if (value != null) {
            words.put(name, value);
        }
    }
}
