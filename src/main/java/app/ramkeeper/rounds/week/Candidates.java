package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.RoundsSettings;
import app.ramkeeper.rounds.week.Bundle.Appointment;
import app.ramkeeper.rounds.week.Bundle.Promise;
import app.ramkeeper.rounds.week.Bundle.SiteTerms;
import app.ramkeeper.visits.WorksBehind;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Finds what could go into a week and bundles it by site. */
@Component
class Candidates {

    /** How far ahead "soon" looks, and how near a site must be to one that is visited anyway. */
    static final int SOON_DAYS = 21;

    static final double NEAR_KM = 8;

    private final JdbcClient jdbc;
    private final DueTasks due;
    private final LookAhead ahead;
    private final RoundsSettings settings;
    private final WorksBehind works;
    private final Clock clock;

    Candidates(
            JdbcClient jdbc, DueTasks due, LookAhead ahead, RoundsSettings settings, WorksBehind works, Clock clock) {
        this.jdbc = jdbc;
        this.works = works;
        this.due = due;
        this.ahead = ahead;
        this.settings = settings;
        this.clock = clock;
    }

    /** The bundles of a week, dearest first, and how many did not fit the limit. */
    record Found(List<Bundle> bundles, int beyond, Terms terms) {}

    /** What sites and task kinds ask for. */
    record Terms(Map<UUID, SiteTerms> sites, Map<UUID, Set<String>> skillsOfKind, Map<UUID, Set<UUID>> includes) {
        SiteTerms of(UUID site) {
            return sites.getOrDefault(site, new SiteTerms(site, 0, false, false, false));
        }
    }

    Found find(LocalDate monday) {
        LocalDate today = LocalDate.now(clock);
        Map<UUID, Bundle> byVisit = new LinkedHashMap<>();
        Map<UUID, Bundle> bySite = new LinkedHashMap<>();
        Map<UUID, Bundle> apart = new LinkedHashMap<>();
        Terms terms = terms();
        for (Appointment visit : appointments(monday)) {
            Bundle bundle = new Bundle(visit.siteId(), visit, monday, today);
            byVisit.put(visit.id(), bundle);
            boolean past = visit.plannedOn() != null && visit.plannedOn().isBefore(today);
            if (visit.state().equals("PLANNED") && visit.kind().equals("SERVICE") && !past) {
                bySite.putIfAbsent(visit.siteId(), bundle);
            }
        }
        for (DueRow task : due.opening(monday, monday.plusDays(6L + SOON_DAYS))) {
            Bundle ofVisit = task.visitId() == null ? null : byVisit.get(task.visitId());
            Bundle there = bySite.get(task.siteId());
            boolean rides = ofVisit != null || there == null || there.ridesAlong(task, terms);
            if (ofVisit == null && !rides && task.press(monday) == DueRow.Press.SOON) {
                continue;
            }
            (ofVisit != null
                            ? ofVisit
                            : (rides ? bySite : apart)
                                    .computeIfAbsent(task.siteId(), s -> new Bundle(s, null, monday, today)))
                    .tasks.add(task);
        }
        for (Promise promise : promises(monday)) {
            bySite.computeIfAbsent(promise.siteId(), s -> new Bundle(s, null, monday, today))
                    .promises
                    .add(promise);
        }
        works.of(byVisit.values().stream()
                        .map(b -> Objects.requireNonNull(b.visit))
                        .filter(v -> Bundle.isWorks(v.kind()))
                        .map(Appointment::id)
                        .toList())
                .forEach(w -> Objects.requireNonNull(byVisit.get(w.visit())).belongsTo(w.of()));
        List<Bundle> forTwo = new ArrayList<>();
        if (!ridesTogether(monday, byVisit.values())) {
            bySite.values().forEach(bundle -> bundle.partForTwo(terms).ifPresent(forTwo::add));
            apart.values().forEach(bundle -> bundle.partForTwo(terms).ifPresent(forTwo::add));
        }
        List<Bundle> all = new ArrayList<>(byVisit.values());
        bySite.values().stream().filter(b -> b.visit == null).forEach(all::add);
        all.addAll(apart.values());
        all.addAll(forTwo);
        Map<UUID, Horizon.Move> moves = ahead.from(monday).moves().stream()
                .filter(move -> move.to().equals(monday) || move.from().equals(monday))
                .collect(Collectors.toMap(Horizon.Move::taskId, Function.identity()));
        all.forEach(bundle -> bundle.lookAhead(moves));
        List<Bundle> kept = withoutFarSoon(all);
        kept.sort(Comparator.comparingDouble(Bundle::worth).reversed());
        int most = Math.min(kept.size(), settings.candidates());
        return new Found(new ArrayList<>(kept.subList(0, most)), kept.size() - most, terms);
    }

    /** Whether anybody rides along with anybody that week. */
    private boolean ridesTogether(LocalDate monday, Collection<Bundle> visits) {
        return visits.stream().anyMatch(b -> b.visit != null && b.visit.plannedOn() != null && b.visit.second() != null)
                || jdbc.sql("""
                        select exists (select from week_rounds r join week_plans p on p.id = r.plan_id
                          where p.monday = ? and r.mate_id is not null)""").param(monday).query(Boolean.class).single();
    }

    /** What is only soon stays if its site lies near one that must be visited anyway. */
    private static List<Bundle> withoutFarSoon(List<Bundle> all) {
        List<Position> pressing = all.stream()
                .filter(Bundle::pressing)
                .flatMap(b -> b.tasks.stream().limit(1))
                .filter(t -> t.latitude() != null && t.longitude() != null)
                .map(Candidates::where)
                .toList();
        return all.stream()
                .filter(b -> !b.onlySoon() || near(b, pressing))
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private static boolean near(Bundle bundle, List<Position> pressing) {
        DueRow task = bundle.tasks.get(0);
        if (task.latitude() == null || task.longitude() == null) {
            return false;
        }
        Position here = where(task);
        return pressing.stream().anyMatch(there -> here.kilometresTo(there) <= NEAR_KM);
    }

    private static Position where(DueRow task) {
        return new Position(
                java.util.Objects.requireNonNull(task.latitude()), java.util.Objects.requireNonNull(task.longitude()));
    }

    private List<Appointment> appointments(LocalDate monday) {
        return jdbc.sql("""
                        select v.id, v.site_id, v.kind, v.planned_on,
                          case when v.answer = 'CONFIRMED' and v.agreed_on is not null then v.agreed_from else v.planned_from end as planned_from, v.minutes, v.minutes_by_hand, v.answer, v.state,
                          (select p.person_id from visit_people p where p.visit_id = v.id order by p.lead desc limit 1) as lead,
                          (select p.person_id from visit_people p where p.visit_id = v.id and not p.lead limit 1) as second,
                          (select count(*) from visit_tasks t where t.visit_id = v.id)::int as asked,
                          (select concat_ws(', ', 'somebody rang', case when c.people_dry then 'people without water' end,
                             case when c.stock_dry then 'stock without water' end,
                             'water for ' || trim_scale(c.water_hours_left) || ' h from ' || to_char(c.received_at at time zone :zone, 'HH24:MI'))
                             from calls c where c.visit_id = v.id order by c.received_at desc limit 1) as call
                        from visits v where (v.planned_on between :monday and :sunday and v.state <> 'CANCELLED')
                          or (v.planned_on is null and v.state = 'PLANNED')
                        order by v.planned_on, v.planned_from nulls last, v.id""")
                .param("monday", monday)
                .param("sunday", monday.plusDays(6))
                .param("zone", clock.getZone().getId())
                .query(Appointment.class)
                .list();
    }

    private List<Promise> promises(LocalDate monday) {
        return jdbc.sql("""
                        select f.site_id, f.text, f.due_on, f.promised from open_follow_ups f join sites s on s.id = f.site_id
                        where f.due_on <= ? and s.merged_into is null order by f.due_on, f.id""").param(monday.plusDays(6)).query(Promise.class).list();
    }

    private Terms terms() {
        Map<UUID, SiteTerms> sites = jdbc.sql("""
                        select s.id as site_id, coalesce(s.walk_minutes, 0) as walk_minutes,
                          exists (select from site_hazards h where h.site_id = s.id and h.kind = 'CONFINED_SPACE') as confined,
                          exists (select from site_hazards h where h.site_id = s.id and h.kind = 'HEAVY_LIFT') as heavy,
                          coalesce(c.biosecurity, 'CLEAN') <> 'CLEAN' as marked
                        from sites s left join catchments c on c.id = s.catchment_id
                        where s.merged_into is null and (s.walk_minutes > 0 or exists (select from site_hazards h where h.site_id = s.id)
                          or c.biosecurity <> 'CLEAN')""").query(SiteTerms.class).list().stream()
                .collect(Collectors.toMap(SiteTerms::siteId, Function.identity()));
        Map<UUID, Set<String>> skills = new HashMap<>();
        jdbc.sql("select task_kind_id, skill from task_kind_skills").query(row -> {
            skills.computeIfAbsent(row.getObject(1, UUID.class), k -> new HashSet<>())
                    .add(row.getString(2));
        });
        Map<UUID, Set<UUID>> includes = new HashMap<>();
        jdbc.sql("select task_kind_id, included_id from task_kind_includes").query(row -> {
            includes.computeIfAbsent(row.getObject(1, UUID.class), k -> new HashSet<>())
                    .add(row.getObject(2, UUID.class));
        });
        return new Terms(sites, skills, includes);
    }
}
