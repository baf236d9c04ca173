package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the office's hand does to a plan. Every step names the version it saw; if that is not the present one nothing happens. */
@Service
@ForOffice
@Transactional
public class WeekEdits {

    private final WeekStore store;
    private final Versions versions;
    private final JdbcClient jdbc;

    WeekEdits(WeekStore store, Versions versions, JdbcClient jdbc) {
        this.store = store;
        this.versions = versions;
        this.jdbc = jdbc;
    }

    /** A step of somebody who saw the plan at a version. */
    public record By(LocalDate monday, int seen, UUID person) {}

    /**
     * Puts a visit into a round.
     *
     * @param before the visit that comes after it; null puts it last
     * @param excuse why a rule may be broken, there and at the visits that come later for it
     * @return what that did to times and rules, in words
     */
    public String move(By by, UUID stopId, UUID person, LocalDate day, @Nullable UUID before, @Nullable String excuse) {
        WeekPlan plan = hold(by);
        Week old = store.load(plan);
        Stop stop = movable(old, stopId);
        TechDay round = old.round(person, day)
                .orElseThrow(() -> new Conflict("There is no such day in this plan: that person has no shift then."));
        Integer at = before == null
                ? null
                : old.stop(before)
                        .filter(s -> day.equals(s.day()) && person.equals(s.personId()))
                        .map(Stop::position)
                        .orElse(null);
        jdbc.sql("""
                        update week_stops set position = position + 1 where plan_id = :plan and person_id = :person and day = :day
                          and position >= :at::int""")
                .param("plan", plan.id())
                .param("person", person)
                .param("day", day)
                .param("at", at)
                .update();
        jdbc.sql("""
                        update week_stops set person_id = :person, day = :day, position = coalesce(:at::int, 100000), set_aside = null,
                          left_out = null, excuse = :excuse where id = :id""")
                .param("person", person)
                .param("day", day)
                .param("at", at)
                .param("excuse", excuse)
                .param("id", stopId)
                .update();
        Placement.renumber(jdbc, plan.id());
        String what = "Moved " + stop.site() + " to " + round.name() + ", " + Times.day(day);
        Week now = store.load(plan);
        Excuses.renew(jdbc, old, now, stopId, excuse);
        versions.next(plan, by.person(), what, null);
        return what + ". " + Effects.between(old, now, stopId);
    }

    /** Takes a visit out of its round, with the office's reason. */
    public String setAside(By by, UUID stopId, String reason) {
        WeekPlan plan = hold(by);
        Stop stop = movable(store.load(plan), stopId);
        jdbc.sql(
                        "update week_stops set person_id = null, day = null, position = null, locked = false, excuse = null, set_aside = ? where id = ?")
                .param(reason)
                .param(stopId)
                .update();
        Placement.renumber(jdbc, plan.id());
        String what = "Took " + stop.site() + " out of the week: " + reason;
        versions.next(plan, by.person(), what, null);
        return what;
    }

    /** Lets the optimiser place again what the office had taken out. */
    public String offerAgain(By by, UUID stopId) {
        WeekPlan plan = hold(by);
        Stop stop = movable(store.load(plan), stopId);
        jdbc.sql("update week_stops set set_aside = null where id = ?")
                .param(stopId)
                .update();
        String what = stop.site() + " may go into the week again";
        versions.next(plan, by.person(), what, null);
        return what;
    }

    /** Gives the reason why a visit breaks a rule where it stands; without one takes the reason back. */
    public String excuse(By by, UUID stopId, @Nullable String reason) {
        WeekPlan plan = hold(by);
        Stop stop = movable(store.load(plan), stopId);
        jdbc.sql("update week_stops set excuse = ? where id = ?")
                .param(reason)
                .param(stopId)
                .update();
        String what = reason == null
                ? "Took back the reason at " + stop.site()
                : "Gave a reason at " + stop.site() + ": " + reason;
        versions.next(plan, by.person(), what, null);
        return what;
    }

    /** Gives a visit as long as its tasks need, instead of what somebody gave it. */
    public String takeMinutes(By by, UUID stopId) {
        WeekPlan plan = hold(by);
        Week old = store.load(plan);
        Stop stop = movable(old, stopId);
        Integer asked = stop.minutesAsked();
        if (asked == null || !stop.tooShort()) {
            throw new Conflict("The tasks of this visit need no more than the time that it has.");
        }
        jdbc.sql("update week_stops set minutes = minutes_asked, minutes_taken = true where id = ?")
                .param(stopId)
                .update();
        String what = "Gave " + stop.site() + " " + Times.span(asked) + " instead of " + Times.span(stop.minutes());
        versions.next(plan, by.person(), what, null);
        return what + ". " + Effects.between(old, store.load(plan), stopId);
    }

    /** Holds a visit to its technician and day, or lets it go. */
    public String lock(By by, UUID stopId, boolean locked) {
        WeekPlan plan = hold(by);
        Stop stop = movable(store.load(plan), stopId);
        if (!stop.placed()) {
            throw new Conflict("Only a visit that stands in a round can be locked.");
        }
        jdbc.sql("update week_stops set locked = ? where id = ?")
                .param(locked)
                .param(stopId)
                .update();
        String what = (locked ? "Locked " : "Unlocked ") + stop.site();
        versions.next(plan, by.person(), what, null);
        return what;
    }

    /** Locks a round, or all of a technician's or of a day's, so that the optimiser leaves them alone. */
    public String lockRounds(By by, @Nullable UUID person, @Nullable LocalDate day, boolean locked) {
        WeekPlan plan = hold(by);
        List<TechDay> meant = store.load(plan).rounds().stream()
                .filter(r -> (person == null || r.personId().equals(person))
                        && (day == null || r.day().equals(day)))
                .toList();
        if (meant.isEmpty()) {
            throw new Conflict("There is no such round in this plan.");
        }
        for (TechDay round : meant) {
            jdbc.sql("""
                            insert into week_rounds (plan_id, person_id, day, locked) values (:plan, :person, :day, :locked)
                            on conflict (plan_id, person_id, day) do update set locked = excluded.locked""")
                    .param("plan", plan.id())
                    .param("person", round.personId())
                    .param("day", round.day())
                    .param("locked", locked)
                    .update();
        }
        String what = (locked ? "Locked " : "Unlocked ")
                + (person == null ? "everybody" : meant.get(0).name())
                + (day == null ? ", the whole week" : ", " + Times.day(day));
        versions.next(plan, by.person(), what, null);
        return what;
    }

    /** Says who rides along on a day, for what nobody may do alone; null for nobody. */
    public String pair(By by, UUID person, LocalDate day, @Nullable UUID mate) {
        WeekPlan plan = hold(by);
        Week week = store.load(plan);
        TechDay round = week.round(person, day).orElseThrow(() -> new Conflict("There is no such round in this plan."));
        if (person.equals(mate)) {
            throw new Conflict("Nobody rides along with themselves. Choose somebody else.");
        }
        jdbc.sql("""
                        insert into week_rounds (plan_id, person_id, day, mate_id) values (:plan, :person, :day, :mate)
                        on conflict (plan_id, person_id, day) do update set mate_id = excluded.mate_id""")
                .param("plan", plan.id())
                .param("person", person)
                .param("day", day)
                .param("mate", mate)
                .update();
        String with = mate == null
                ? "nobody"
                : week.rounds().stream()
                        .filter(r -> r.personId().equals(mate))
                        .map(TechDay::name)
                        .findFirst()
                        .orElse("somebody");
        String what = round.name() + ", " + Times.day(day) + ": " + with + " rides along";
        versions.next(plan, by.person(), what, null);
        return what;
    }

    /** Adds a visit by hand at a site that is not a candidate. */
    public UUID add(By by, SiteId site, int minutes, String why) {
        WeekPlan plan = hold(by);
        UUID id = Uuids.next();
        String name = jdbc.sql("select name from sites where id = ? and merged_into is null")
                .param(site.value())
                .query(String.class)
                .optional()
                .orElseThrow(() -> new Missing("site", site));
        jdbc.sql("""
                        insert into week_stops (id, plan_id, site_id, kind, minutes, crew, must, worth, why, added_by_hand, skills)
                        select :id, :plan, :site, 'SERVICE', :minutes, case when cardinality(h.asks) > 0 then 2 else 1 end, true, :worth, :why, true, h.asks
                        from (select coalesce(array_agg(distinct case kind when 'HEAVY_LIFT' then 'LIFTING' else kind end)
                            filter (where kind in ('CONFINED_SPACE', 'HEAVY_LIFT')), '{}') as asks from site_hazards where site_id = :site) h""")
                .param("id", id)
                .param("plan", plan.id())
                .param("site", site.value())
                .param("minutes", (minutes + 4) / 5 * 5)
                .param("worth", Bundle.PROMISE)
                .param("why", why)
                .update();
        versions.next(plan, by.person(), "Added " + name + ": " + why, null);
        return id;
    }

    /** Puts a round's clock forward: what is still to come is timed again from there. */
    public String late(By by, UUID person, LocalDate day, @Nullable Integer at) {
        WeekPlan plan = hold(by);
        Week old = store.load(plan);
        TechDay round = old.round(person, day).orElseThrow(() -> new Conflict("There is no such round in this plan."));
        jdbc.sql("""
                        insert into week_rounds (plan_id, person_id, day, late_at) values (:plan, :person, :day, :at)
                        on conflict (plan_id, person_id, day) do update set late_at = excluded.late_at""")
                .param("plan", plan.id())
                .param("person", person)
                .param("day", day)
                .param("at", at)
                .update();
        Excuses.renew(jdbc, old, store.load(plan), null, null);
        String what = at == null
                ? round.name() + ", " + Times.day(day) + ": on time again"
                : round.name() + ", " + Times.day(day) + ": sets out for the next visit at " + Times.say(at);
        versions.next(plan, by.person(), what, null);
        return what;
    }

    /** Goes back one change. */
    public void undo(By by) {
        versions.undo(hold(by), by.person());
    }

    /** Takes over where a run of the optimiser has put everything. */
    public void takeOver(By by, List<WeekStore.Placing> placings, List<LeftOut> leftOut, String what) {
        WeekPlan plan = hold(by);
        jdbc.sql(
                        "update week_stops set person_id = null, day = null, position = null, left_out = null where plan_id = ? and not coalesce((select state <> 'PLANNED' from visits v where v.id = visit_id), false)")
                .param(plan.id())
                .update();
        for (WeekStore.Placing p : placings) {
            jdbc.sql("update week_stops set person_id = ?, day = ?, position = ? where id = ? and plan_id = ?")
                    .params(p.personId(), p.day(), p.position(), p.stopId(), plan.id())
                    .update();
        }
        leftOut.forEach(l -> jdbc.sql("update week_stops set left_out = ? where id = ? and plan_id = ?")
                .params(l.why(), l.stop(), plan.id())
                .update());
        Placement.renumber(jdbc, plan.id());
        versions.next(plan, by.person(), what, null);
    }

    /** Why a visit is in no round. */
    public record LeftOut(UUID stop, String why) {}

    /** Takes the plan until the transaction ends; refuses if somebody changed it since it was seen. */
    public WeekPlan hold(By by) {
        WeekPlan plan = store.plan(by.monday()).orElseThrow(() -> new Missing("week", by.monday()));
        return versions.hold(plan, by.seen());
    }

    private static Stop movable(Week week, UUID id) {
        Stop stop = week.stop(id).orElseThrow(() -> new Missing("visit of the week", id));
        if (stop.over()) {
            throw new Conflict("This visit is over: its report is in the history.");
        }
        return stop;
    }
}
