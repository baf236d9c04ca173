package app.ramkeeper.rounds.week;

import app.ramkeeper.rounds.week.Moved.Change;
import app.ramkeeper.shared.Conflict;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Keeps each version of a plan, and goes back to one. */
@Repository
public class Versions {

    /** The changes of a plan after a version, newest first. */
    public static final String SINCE = """
            select v.no, v.at, p.name, v.what, v.same_as from week_versions v left join people p on p.id = v.by_person
            where v.plan_id = :plan and v.no > :no order by v.no desc limit 200""";

    private final JdbcClient jdbc;
    private final Clock clock;

    Versions(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * Takes the plan's row until the transaction ends.
     *
     * @throws Moved if it is not at the version that was seen
     */
    WeekPlan hold(WeekPlan plan, int seen) {
        WeekPlan now = jdbc.sql("""
                        select id, monday, version, published_version, published_at, first_published_at, travel_note
                        from week_plans where id = ? for update""").param(plan.id()).query(WeekPlan.class).single();
        if (now.version() != seen) {
            throw new Moved(now, since(plan.id(), seen));
        }
        return now;
    }

    /** Writes down how everything stands as the plan's next version. */
    int next(WeekPlan plan, @Nullable UUID by, String what, @Nullable Integer sameAs) {
        int no = jdbc.sql("update week_plans set version = version + 1 where id = ? returning version")
                .param(plan.id())
                .query(Integer.class)
                .single();
        jdbc.sql("""
                        insert into week_versions (plan_id, no, at, by_person, what, same_as, arrangement)
                        select :plan, :no, :at, :by, :what, :same::int, jsonb_build_object(
                          'stops', coalesce((select jsonb_agg(jsonb_build_object('s', id, 'p', person_id, 'd', day, 'n', position, 'l', locked,
                             'a', set_aside, 'e', excuse, 't', minutes_taken)) from week_stops where plan_id = :plan
                             and (day is not null or set_aside is not null or locked or minutes_taken)), '[]'),
                          'rounds', coalesce((select jsonb_agg(jsonb_build_object('p', person_id, 'd', day, 'm', mate_id, 'l', locked))
                             from week_rounds where plan_id = :plan), '[]'))""")
                .param("plan", plan.id())
                .param("no", no)
                .param("at", Timestamp.from(clock.instant()))
                .param("by", by)
                .param("what", what.length() > 500 ? what.substring(0, 500) : what)
                .param("same", sameAs)
                .update();
        return no;
    }

    /** The changes after a version, newest first. */
    public List<Change> since(UUID plan, int version) {
        return jdbc.sql(SINCE)
                .param("plan", plan)
                .param("no", version)
                .query(Change.class)
                .list();
    }

    /**
     * The published version if some visit stands elsewhere in it than in the given one, else the last before that in which one did;
     * what was only locked or excused does not count.
     */
    public Optional<Integer> lastOther(WeekPlan plan, int version) {
        return jdbc.sql("""
                        with placed as materialized (
                          select v.no, (select string_agg(concat_ws('/', a.s, a.p, a.d, a.n), ',' order by a.s)
                            from jsonb_to_recordset(v.arrangement -> 'stops') as a(s uuid, p uuid, d date, n integer) where a.d is not null) as places
                          from week_versions v where v.plan_id = :plan and v.no between :version - 200 and :version)
                        select coalesce(max(o.no) filter (where o.no = :published::int), max(o.no)) from placed o join placed n on n.no = :version where o.places is distinct from n.places""")
                .param("plan", plan.id())
                .param("version", version)
                .param("published", plan.publishedVersion())
                .query(Integer.class)
                .optional();
    }

    /** Puts everything back to how it stood before the last change that has not been undone. */
    void undo(WeekPlan plan, @Nullable UUID by) {
        int target = same(plan.id(), plan.version()) - 1;
        if (target < 1) {
            throw new Conflict("There is nothing left to undo: this is the plan as it was made.");
        }
        int back = same(plan.id(), target);
        String undone = jdbc.sql("select what from week_versions where plan_id = ? and no = ?")
                .param(plan.id())
                .param(target + 1)
                .query(String.class)
                .single();
        restore(plan.id(), back);
        next(plan, by, "Undone: " + undone, back);
    }

    /** Which version's arrangement a version has. */
    private int same(UUID plan, int no) {
        return jdbc.sql("select coalesce(same_as, no) from week_versions where plan_id = ? and no = ?")
                .param(plan)
                .param(no)
                .query(Integer.class)
                .optional()
                .orElse(no);
    }

    private void restore(UUID plan, int no) {
        jdbc.sql("""
                        update week_stops w set person_id = a.p, day = a.d, position = a.n, locked = coalesce(a.l, false), set_aside = a.a, excuse = a.e,
                          minutes_taken = coalesce(a.t, false) and w.minutes_given is not null,
                          minutes = case when w.minutes_taken = coalesce(a.t, false) or w.minutes_given is null then w.minutes
                            when a.t then w.minutes_asked else w.minutes_given end
                        from (select s.id, a.* from week_stops s left join (select r.* from week_versions v,
                            jsonb_to_recordset(v.arrangement -> 'stops') as r(s uuid, p uuid, d date, n integer, l boolean, a text, e text, t boolean)
                            where v.plan_id = :plan and v.no = :no) a on a.s = s.id where s.plan_id = :plan) a
                        where w.id = a.id and not exists (select from visits v where v.id = w.visit_id and v.state <> 'PLANNED')""").param("plan", plan).param("no", no).update();
        jdbc.sql("delete from week_rounds where plan_id = ?").param(plan).update();
        jdbc.sql("""
                        insert into week_rounds (plan_id, person_id, day, mate_id, locked)
                        select v.plan_id, r.p, r.d, r.m, r.l from week_versions v,
                          jsonb_to_recordset(v.arrangement -> 'rounds') as r(p uuid, d date, m uuid, l boolean)
                        where v.plan_id = :plan and v.no = :no""").param("plan", plan).param("no", no).update();
    }
}
