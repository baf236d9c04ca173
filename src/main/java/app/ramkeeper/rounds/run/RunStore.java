package app.ramkeeper.rounds.run;

import app.ramkeeper.rounds.week.Versions;
import app.ramkeeper.rounds.week.WeekStore.Placing;
import app.ramkeeper.shared.OneStatement;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Keeps the runs: what was asked, how far it is, what came of it. */
@Repository
class RunStore {

    private static final String RUN = """
            select id, plan_id, kind, seed, iterations, base_version, state, asked_by, actor, asked_at, finished_at, stop_wanted, share,
              visits_in, drive_minutes, late_visits, message from week_runs
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    RunStore(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    void add(UUID id, UUID plan, String kind, long seed, long iterations, int base, UUID by, String actor) {
        jdbc.sql("""
                        insert into week_runs (id, plan_id, kind, seed, iterations, base_version, state, asked_by, actor, asked_at)
                        values (?, ?, ?, ?, ?, ?, 'WAITING', ?, ?, ?)""")
                .params(id, plan, kind, seed, iterations, base, by, actor, Timestamp.from(clock.instant()))
                .update();
    }

    Optional<WeekRun> byId(UUID id) {
        return jdbc.sql(RUN + "where id = ?").param(id).query(WeekRun.class).optional();
    }

    Optional<WeekRun> last(UUID plan) {
        return jdbc.sql(RUN + "where plan_id = ? order by asked_at desc, id desc limit 1")
                .param(plan)
                .query(WeekRun.class)
                .optional();
    }

    private static final OneStatement BESIDE = new OneStatement()
            .list("runs", RUN + "where plan_id = :plan order by asked_at desc, id desc limit 1")
            .list("history", Versions.SINCE);

    Beside beside(UUID plan) {
        return BESIDE.read(jdbc, Map.of("plan", plan, "no", 0), Beside.class);
    }

    void started(UUID id) {
        jdbc.sql(
                        "update week_runs set state = 'WORKING', started_at = ?, share = 0 where id = ? and state in ('WAITING', 'WORKING')")
                .params(Timestamp.from(clock.instant()), id)
                .update();
    }

    /** Writes down how far it is; true if somebody wants it to stop. */
    boolean progress(UUID id, double share, int in, int driveMinutes, int late, double cost) {
        return jdbc.sql("""
                        update week_runs set share = ?, visits_in = ?, drive_minutes = ?, late_visits = ?, cost = ?
                        where id = ? returning stop_wanted""")
                .params(share, in, driveMinutes, late, cost, id)
                .query(Boolean.class)
                .optional()
                .orElse(true);
    }

    void wantStop(UUID plan) {
        jdbc.sql("update week_runs set stop_wanted = true where plan_id = ? and state in ('WAITING', 'WORKING')")
                .param(plan)
                .update();
    }

    /** Ends a run that still works; false if another node has ended it already. */
    boolean end(UUID id, String state, String message) {
        return jdbc.sql("""
                        update week_runs set state = ?, message = ?, finished_at = ?, share = 1
                        where id = ? and state in ('WAITING', 'WORKING')""")
                        .params(state, message, Timestamp.from(clock.instant()), id)
                        .update()
                == 1;
    }

    void keepProposal(UUID id, List<Placing> placings) {
        jdbc.sql("update week_runs set proposal = ?::jsonb where id = ?")
                .params(json.writeValueAsString(placings), id)
                .update();
    }

    Optional<List<Placing>> proposal(UUID id) {
        return jdbc.sql("select proposal::text from week_runs where id = ? and proposal is not null and state = 'KEPT'")
                .param(id)
                .query(String.class)
                .optional()
                .map(text -> json.readValue(text, new TypeReference<List<Placing>>() {}));
    }

    /** How much each had to do in the four weeks before: 1 for whoever had most, nothing for whoever had nothing. */
    Map<UUID, Double> burden(LocalDate monday) {
        Map<UUID, Double> burden = new HashMap<>();
        jdbc.sql("""
                        select person_id, sum / max(sum) over () as share
                        from (select p.person_id, sum(v.minutes)::float8 as sum from visits v join visit_people p on p.visit_id = v.id
                          where v.state <> 'CANCELLED' and v.planned_on between :from::date and :until::date group by p.person_id) s""")
                .param("from", monday.minusDays(28))
                .param("until", monday.minusDays(1))
                .query(row -> {
                    burden.put(row.getObject(1, UUID.class), row.getDouble(2));
                });
        return burden;
    }

    void taken(UUID id) {
        jdbc.sql("update week_runs set state = 'DONE' where id = ?").param(id).update();
    }
}
