package app.ramkeeper.rounds.week;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.travel.Travels;
import app.ramkeeper.rounds.week.Bundle.Appointment;
import app.ramkeeper.rounds.week.Bundle.Lengths;
import app.ramkeeper.rounds.week.Bundle.SiteTerms;
import app.ramkeeper.rounds.week.Candidates.Found;
import app.ramkeeper.shared.Uuids;
import java.sql.Date;
import java.sql.Time;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Makes a week's plan and brings it up to date with what is due and agreed. Nothing placed by hand moves. */
@Service
@ForOffice
@Transactional
public class Preparation {

    private final WeekStore store;
    private final Candidates candidates;
    private final Versions versions;
    private final Travels travels;
    private final JdbcClient jdbc;
    private final JdbcTemplate batch;
    private final Clock clock;

    Preparation(
            WeekStore store,
            Candidates candidates,
            Versions versions,
            Travels travels,
            JdbcClient jdbc,
            JdbcTemplate batch,
            Clock clock) {
        this.store = store;
        this.candidates = candidates;
        this.versions = versions;
        this.travels = travels;
        this.jdbc = jdbc;
        this.batch = batch;
        this.clock = clock;
    }

    /** Makes the plan of a week, or brings it up to date if there is one; says in words what it did. */
    public String prepare(LocalDate monday, @Nullable UUID by) {
        jdbc.sql("insert into week_plans (id, monday) values (?, ?) on conflict (monday) do nothing")
                .param(Uuids.next())
                .param(monday)
                .update();
        WeekPlan plan = store.plan(monday).orElseThrow();
        plan = versions.hold(plan, plan.version());
        Found found = candidates.find(monday);
        List<Kept> present = present(plan.id());
        Map<Bundle, Kept> same = same(found, present);
        int gone = remove(present, same, kept -> kept.visitId() != null);
        Rows rows = new Rows(plan, found, same);
        found.bundles().stream().filter(bundle -> bundle.visit != null).forEach(rows::add);
        rows.write();
        pairs(plan, found);
        narrow(rows);
        same.clear();
        same.putAll(same(found, present));
        gone += remove(present, same, kept -> kept.visitId() == null && !kept.addedByHand());
        found.bundles().stream().filter(bundle -> bundle.visit == null).forEach(rows::add);
        rows.write();
        int fresh = found.bundles().size() - same.size();
        askTravel(plan);
        String said = words(plan.version() == 0, found, fresh, gone);
        versions.next(plan, by, said, null);
        return said;
    }

    private static String words(boolean first, Found found, int fresh, int gone) {
        String beyond =
                found.beyond() == 0 ? "" : "; %,d more that matter least were not looked at".formatted(found.beyond());
        return first
                ? "Made with %,d visits that could go in".formatted(fresh) + beyond + "."
                : "Brought up to date: %,d new, %,d gone".formatted(fresh, gone) + beyond + ".";
    }

    private record Kept(
            UUID id,
            UUID siteId,
            @Nullable UUID visitId,
            int crew,
            boolean addedByHand,
            boolean minutesTaken,
            @Nullable LocalDate publishedOn) {}

    /** Which stop each bundle was before: the visit's; else the site's for as many people; else what is left of the site's. */
    private static Map<Bundle, Kept> same(Found found, List<Kept> present) {
        Map<Bundle, Kept> same = new IdentityHashMap<>();
        Map<UUID, Kept> byVisit = present.stream()
                .filter(kept -> kept.visitId() != null)
                .collect(Collectors.toMap(Kept::visitId, kept -> kept));
        Map<UUID, List<Kept>> bySite =
                present.stream().filter(kept -> kept.visitId() == null).collect(Collectors.groupingBy(Kept::siteId));
        for (Bundle bundle : found.bundles()) {
            Kept kept = bundle.visit == null ? null : byVisit.get(bundle.visit.id());
            if (kept != null) {
                same.put(bundle, kept);
            }
        }
        List<BiPredicate<Bundle, Kept>> ways =
                List.of((bundle, kept) -> forTwo(bundle, found) == kept.crew() > 1, (bundle, kept) -> true);
        for (BiPredicate<Bundle, Kept> way : ways) {
            for (Bundle bundle : found.bundles()) {
                List<Kept> there = bySite.getOrDefault(bundle.site, List.of());
                if (bundle.visit == null && !same.containsKey(bundle)) {
                    there.stream()
                            .filter(kept -> way.test(bundle, kept))
                            .findFirst()
                            .ifPresent(kept -> {
                                same.put(bundle, kept);
                                there.remove(kept);
                            });
                }
            }
        }
        return same;
    }

    private static boolean forTwo(Bundle bundle, Found found) {
        SiteTerms terms = found.terms().of(bundle.site);
        return bundle.crew(terms, bundle.skills(terms, found.terms().skillsOfKind())) > 1;
    }

    private List<Kept> present(UUID plan) {
        return jdbc.sql(
                        "select id, site_id, visit_id, crew, added_by_hand, minutes_taken, published_on from week_stops where plan_id = ?")
                .param(plan)
                .query(Kept.class)
                .list();
    }

    private int remove(List<Kept> present, Map<Bundle, Kept> same, Predicate<Kept> which) {
        List<UUID> gone = present.stream()
                .filter(kept -> which.test(kept) && !same.containsValue(kept))
                .map(Kept::id)
                .toList();
        batch.batchUpdate(
                "delete from week_stops where id = ?",
                gone.stream().map(id -> new Object[] {id}).toList());
        return gone.size();
    }

    /** What has no room in a planned visit goes into a visit of its own. */
    private void narrow(Rows rows) {
        Map<UUID, Lengths> lengths = rows.lengths();
        if (lengths.isEmpty()) {
            return;
        }
        Map<UUID, Integer> minutes = new Room(store.load(rows.plan), LocalDate.now(clock), lengths).minutes();
        rows.ids.forEach((bundle, id) -> {
            Lengths may = lengths.get(id);
            Integer chosen = minutes.get(id);
            if (may == null || chosen == null || chosen >= may.full()) {
                return;
            }
            if (chosen < may.own()) {
                bundle.keepTime();
            }
            List<DueRow> riders = bundle.giveUpRiders().stream()
                    .filter(task -> task.press(rows.plan.monday()) != DueRow.Press.SOON)
                    .toList();
            if (!riders.isEmpty() && bundle.visit != null) {
                apart(bundle.site, rows, LocalDate.now(clock)).take(riders, bundle.visit.plannedOn());
            }
            rows.add(bundle);
        });
    }

    private static Bundle apart(UUID site, Rows rows, LocalDate today) {
        List<Bundle> bundles = rows.found.bundles();
        return bundles.stream()
                .filter(bundle -> bundle.site.equals(site) && bundle.visit == null && !forTwo(bundle, rows.found))
                .findFirst()
                .orElseGet(() -> {
                    Bundle made = new Bundle(site, null, rows.plan.monday(), today);
                    bundles.add(made);
                    return made;
                });
    }

    private void askTravel(WeekPlan plan) {
        Week week = store.load(plan);
        String note = travels.ask(WeekStore.places(week.stops(), week.rounds()));
        jdbc.sql("update week_plans set travel_note = ? where id = ?")
                .param(note)
                .param(plan.id())
                .update();
    }

    /** Two who are down for one visit ride together that day, unless the second has visits alone. */
    private void pairs(WeekPlan plan, Found found) {
        Set<RoundKey> leading = new HashSet<>();
        found.bundles().forEach(b -> {
            if (b.visit != null && b.visit.plannedOn() != null && b.visit.lead() != null) {
                leading.add(new RoundKey(b.visit.lead(), b.visit.plannedOn()));
            }
        });
        for (Bundle bundle : found.bundles()) {
            Appointment v = bundle.visit;
            if (v != null
                    && v.second() != null
                    && v.lead() != null
                    && v.plannedOn() != null
                    && !leading.contains(new RoundKey(v.second(), v.plannedOn()))) {
                jdbc.sql("""
                                insert into week_rounds (plan_id, person_id, day, mate_id) values (?, ?, ?, ?)
                                on conflict (plan_id, person_id, day) do nothing""")
                        .params(plan.id(), v.lead(), v.plannedOn(), v.second())
                        .update();
            }
        }
    }

    /** Rows to be written together. */
    private final class Rows {
        private final WeekPlan plan;
        private final Found found;
        private final Map<Bundle, Kept> same;
        private final Map<Bundle, UUID> ids = new IdentityHashMap<>();
        private final List<Object[]> stops = new ArrayList<>();
        private final List<Object[]> tasks = new ArrayList<>();
        private final List<Object[]> places = new ArrayList<>();

        Rows(WeekPlan plan, Found found, Map<Bundle, Kept> same) {
            this.plan = plan;
            this.found = found;
            this.same = same;
        }

        /** Those planned visits that may become longer than they were given. */
        Map<UUID, Lengths> lengths() {
            Map<UUID, Lengths> all = new HashMap<>();
            ids.forEach((bundle, id) -> {
                Lengths lengths = bundle.lengths(
                        found.terms().of(bundle.site), found.terms().includes(), taken(same.get(bundle)));
                if (lengths.full() > lengths.given()) {
                    all.put(id, lengths);
                }
            });
            return all;
        }

        private static boolean taken(@Nullable Kept kept) {
            return kept != null && kept.minutesTaken();
        }

        void add(Bundle bundle) {
            Kept kept = same.get(bundle);
            boolean first = !ids.containsKey(bundle);
            UUID id = ids.computeIfAbsent(bundle, b -> kept == null ? Uuids.next() : kept.id());
            SiteTerms terms = found.terms().of(bundle.site);
            Set<String> skills = bundle.skills(terms, found.terms().skillsOfKind());
            Appointment visit = bundle.visit;
            Bundle.Minutes minutes = bundle.minutes(terms, found.terms().includes());
            stops.add(new @Nullable Object[] {
                id,
                plan.id(),
                bundle.site,
                visit == null ? null : visit.id(),
                visit == null ? "SERVICE" : visit.kind(),
                bundle.planned(minutes, taken(kept)),
                bundle.crew(terms, skills),
                String.join(",", skills),
                bundle.pressing()
                        && (visit == null
                                || visit.holdsDay()
                                || visit.kind().equals("CALL_OUT")
                                || !bundle.tasks.isEmpty()),
                visit != null && visit.holdsDay() ? Date.valueOf(visit.plannedOn()) : null,
                visit != null && visit.agreed() && visit.plannedFrom() != null
                        ? Time.valueOf(visit.plannedFrom())
                        : null,
                visit != null && visit.plannedOn() != null && visit.answer().equals("ASKED_TO_MOVE")
                        ? Date.valueOf(visit.plannedOn())
                        : null,
                bundle.worth(),
                bundle.worthADay(),
                bundle.why(),
                bundle.dueOn() == null ? null : Date.valueOf(bundle.dueOn()),
                bundle.lateFrom() == null ? null : Date.valueOf(bundle.lateFrom()),
                visit == null ? null : minutes.given(),
                visit == null ? null : minutes.asked(),
                minutes.riding(),
                bundle.promised(),
                bundle.promisedOn() == null ? null : Date.valueOf(bundle.promisedOn())
            });
            bundle.tasks.forEach(t -> tasks.add(new Object[] {id, t.taskId(), t.installId(), t.kindId()}));
            if (first) {
                place(id, visit, kept);
            }
        }

        /** A visit with day and person stands there at first, and again when its page has moved it since. */
        private void place(UUID id, @Nullable Appointment visit, @Nullable Kept kept) {
            if (visit == null
                    || visit.plannedOn() == null
                    || visit.lead() == null
                    || visit.answer().equals("ASKED_TO_MOVE")) {
                return;
            }
            boolean moved = kept != null
                    && kept.publishedOn() != null
                    && !kept.publishedOn().equals(visit.plannedOn());
            if (kept == null || moved) {
                int from = visit.plannedFrom() == null ? 0 : Times.of(visit.plannedFrom());
                places.add(new Object[] {visit.lead(), Date.valueOf(visit.plannedOn()), 1000 + from, id});
            }
        }

        void write() {
            batch.batchUpdate("""
                    insert into week_stops as w (id, plan_id, site_id, visit_id, kind, minutes, crew, skills, must, fixed_on, fixed_from, not_on,
                      worth, worth_a_day, why, due_on, late_from, minutes_given, minutes_asked, minutes_riding, promised, promised_on)
                      values (?, ?, ?, ?, ?, ?, ?, string_to_array(?, ','), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                    on conflict (id) do update set kind = excluded.kind, minutes = excluded.minutes, crew = excluded.crew,
                      skills = excluded.skills, must = excluded.must, fixed_on = excluded.fixed_on, fixed_from = excluded.fixed_from,
                      not_on = coalesce(excluded.not_on, w.not_on), worth = excluded.worth, worth_a_day = excluded.worth_a_day, why = excluded.why,
                      due_on = excluded.due_on, late_from = excluded.late_from,
                      minutes_given = excluded.minutes_given, minutes_asked = excluded.minutes_asked, minutes_riding = excluded.minutes_riding,
                      promised = excluded.promised, promised_on = excluded.promised_on,
                      minutes_taken = w.minutes_taken and excluded.minutes_given is not null""", stops);
            batch.batchUpdate(
                    "delete from week_stop_tasks where stop_id = ?",
                    stops.stream().map(row -> new Object[] {row[0]}).toList());
            batch.batchUpdate(
                    "insert into week_stop_tasks (stop_id, task_id, install_id, task_kind_id) values (?, ?, ?, ?)",
                    tasks);
            batch.batchUpdate("update week_stops set person_id = ?, day = ?, position = ? where id = ?", places);
            Placement.renumber(jdbc, plan.id());
            List.of(stops, tasks, places).forEach(List::clear);
        }
    }
}
