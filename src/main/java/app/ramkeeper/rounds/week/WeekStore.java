package app.ramkeeper.rounds.week;

import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.travel.Travels;
import app.ramkeeper.rounds.week.Hours.Access;
import app.ramkeeper.rounds.week.Hours.Closed;
import app.ramkeeper.rounds.week.OpenCalls.OpenCall;
import app.ramkeeper.rounds.week.Supplies.Need;
import app.ramkeeper.rounds.week.Supplies.OnHand;
import app.ramkeeper.rounds.week.TechDays.Team;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.OneStatement;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.WorksBehind;
import app.ramkeeper.visits.WorksBehind.Works;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads weeks. */
@Repository
public class WeekStore {

    /** Whether a task could go into the week of a plan p. */
    private static final String OPEN = DueTasks.isOpen("p.monday + 6", "p.monday + " + (6 + Candidates.SOON_DAYS));

    private static final String STOPS = """
            select w.id, w.site_id, s.name as site, s.locality, s.latitude, s.longitude, coalesce(c.biosecurity, 'CLEAN') as biosecurity,
              s.catchment_id, w.visit_id, w.kind, n.minutes, w.crew, array_to_string(w.skills, ',') as skills, w.must, w.fixed_on, w.fixed_from,
              w.not_on, w.worth, w.worth_a_day, w.why, w.due_on, w.late_from, w.added_by_hand, w.person_id, w.day, w.position, w.locked, w.set_aside,
              w.excuse, w.left_out, w.published_on, w.published_from, w.published_to, w.changed_at, v.state as visit_state, v.answer,
              case when v.answer in ('NONE', 'NO_ANSWER') then v.agreed_on end as had_agreed_on,
              case when v.answer in ('NONE', 'NO_ANSWER') then v.agreed_from end as had_agreed_from,
              coalesce(v.office_must_ring, false) as office_must_ring,
              (select string_agg(distinct k.name, ', ') from week_stop_tasks t join task_kinds k on k.id = t.task_kind_id where t.stop_id = w.id) as tasks,
              (select r.recorded_by from current_reports r where r.site_id = w.site_id order by r.attended_on desc, r.recorded_at desc limit 1) as last_technician,
              w.promised, w.promised_on, w.minutes_asked, case when w.published_on is not null and v.state = 'PLANNED' and n.minutes <> v.minutes then v.minutes end as minutes_told,
              w.published_on is not null and v.state = 'PLANNED' and exists (
                select st.task_id from week_stop_tasks st where st.stop_id = w.id except select vt.task_id from visit_tasks vt where vt.visit_id = v.id
                union all (select vt.task_id from visit_tasks vt join service_tasks t on t.id = vt.task_id join week_plans p on p.id = w.plan_id
                  where vt.visit_id = v.id and %s except select st.task_id from week_stop_tasks st where st.stop_id = w.id)) as tasks_untold
            from week_stops w join sites s on s.id = w.site_id left join catchments c on c.id = s.catchment_id
              left join visits v on v.id = w.visit_id
              left join lateral (select case when w.minutes_riding = 0 then v.minutes
                else least(1440, greatest(10, (v.minutes + w.minutes_riding + 4) / 5 * 5)) end as now) typed on v.state = 'PLANNED' and v.minutes_by_hand
                  and not w.minutes_taken
              -- what was typed at the visit since its minutes were read counts at once
              cross join lateral (select case when typed.now <> w.minutes_given then typed.now else w.minutes end as minutes) n
            where w.plan_id = :plan order by w.person_id, w.day, w.position, s.name, w.id""".formatted(OPEN);

    static final String NEEDS = """
            select t.stop_id, n.part_id, n.name as part, sum(n.quantity)::float8 as quantity
            from week_stop_tasks t join week_stops w on w.id = t.stop_id
              join service_tasks st on st.id = t.task_id
              join install_task_parts n on n.install_id = t.install_id and n.task_kind_id = t.task_kind_id
                and (st.pump_id is null or st.pump_id = n.pump_id)
            where w.plan_id = :plan group by t.stop_id, n.part_id, n.name""";

    private final JdbcClient jdbc;
    private final TechDays techDays;
    private final Travels travels;
    private final WorksBehind works;
    private final Clock clock;

    WeekStore(JdbcClient jdbc, TechDays techDays, Travels travels, WorksBehind works, Clock clock) {
        this.jdbc = jdbc;
        this.techDays = techDays;
        this.travels = travels;
        this.works = works;
        this.clock = clock;
    }

    /** The plan of the week that begins on a Monday. */
    public Optional<WeekPlan> plan(LocalDate monday) {
        return jdbc.sql("""
                        select id, monday, version, published_version, published_at, first_published_at, travel_note
                        from week_plans where monday = ?""").param(monday).query(WeekPlan.class).optional();
    }

    public Optional<WeekPlan> plan(UUID id) {
        return jdbc.sql("""
                        select id, monday, version, published_version, published_at, first_published_at, travel_note
                        from week_plans where id = ?""").param(id).query(WeekPlan.class).optional();
    }

    /** The week that begins on a Monday; a week without a plan is missing. */
    public Week load(LocalDate monday) {
        return load(plan(monday).orElseThrow(() -> new Missing("week", monday)));
    }

    /** The week with all that is needed to drive its rounds. */
    public Week load(WeekPlan plan) {
        return week(plan, stops(plan.id()));
    }

    private Week week(WeekPlan plan, List<Stop> stops) {
        Team team = techDays.of(plan, stops);
        Map<String, ?> params =
                Map.of("plan", plan.id(), "zone", clock.getZone().getId());
        Lists lists = LISTS.read(jdbc, params, Lists.class);
        Drive drive = new Drive(travels.known(places(stops, team.days())), rules(lists, stops));
        return new Week(plan, stops, team.days(), team.nowhere(), OpenCalls.bySite(lists.calls()), drive);
    }

    /** The week as an earlier version had it: today's stops, yesterday's places. */
    public Week loadAs(WeekPlan plan, int version) {
        Map<UUID, Placing> then = arrangement(plan.id(), version).stream()
                .collect(Collectors.toMap(Placing::stopId, Function.identity()));
        List<Stop> stops = stops(plan.id()).stream()
                .map(stop -> placed(stop, then.get(stop.id())))
                .toList();
        return week(plan, stops);
    }

    /** Where a stop stood in a version. */
    public record Placing(UUID stopId, UUID personId, LocalDate day, int position) {}

    List<Placing> arrangement(UUID plan, int version) {
        return jdbc.sql("""
                        select a.s as stop_id, a.p as person_id, a.d as day, a.n as position from week_versions v,
                          jsonb_to_recordset(v.arrangement -> 'stops') as a(s uuid, p uuid, d date, n integer)
                        where v.plan_id = ? and v.no = ? and a.p is not null and a.d is not null and a.n is not null""").param(plan).param(version).query(Placing.class).list();
    }

    private static Stop placed(Stop stop, @Nullable Placing at) {
        return Stops.placed(
                stop,
                at == null ? null : at.personId(),
                at == null ? null : at.day(),
                at == null ? null : at.position());
    }

    List<Stop> stops(UUID plan) {
        return jdbc.sql(STOPS).param("plan", plan).query(Stop.class).list();
    }

    /** What a stop's visit is to answer: the tasks of the stop, and those of the visit that no week of this time would take up. */
    public List<PlanVisit.Task> tasks(Stop stop) {
        return jdbc.sql("""
                        select task_id as task, install_id as install, task_kind_id as kind from week_stop_tasks where stop_id = :stop
                        union select vt.task_id, vt.install_id, vt.task_kind_id from week_stops w join week_plans p on p.id = w.plan_id
                          join visit_tasks vt on vt.visit_id = w.visit_id join service_tasks t on t.id = vt.task_id
                        where w.id = :stop and t.ended_on is null and not (%s)""".formatted(OPEN))
                .param("stop", stop.id())
                .query((row, n) -> new PlanVisit.Task(
                        row.getObject("task", UUID.class),
                        new InstallId(row.getObject("install", UUID.class)),
                        new TaskKindId(row.getObject("kind", UUID.class))))
                .list();
    }

    /** All places of a week. */
    public static List<Position> places(List<Stop> stops, List<TechDay> rounds) {
        return Stream.concat(
                        stops.stream().map(Stop::where), rounds.stream().flatMap(r -> Stream.of(r.start(), r.end())))
                .filter(Objects::nonNull)
                .map(place -> (Position) Objects.requireNonNull(place))
                .distinct()
                .toList();
    }

    record Skill(String code, String name) {}

    /** What the rules of one week are made of, and what was rung about. */
    record Lists(
            List<Skill> skills,
            List<Access> access,
            List<Closed> closed,
            List<Need> needs,
            List<OnHand> levels,
            List<OpenCall> calls) {}

    private static final OneStatement LISTS = new OneStatement()
            .list("skills", "select code, name from skills")
            .list("access", """
                    select site_id, weekday, (extract(epoch from from_time) / 60)::int as "from", (extract(epoch from until_time) / 60)::int as until
                    from access_windows where site_id in (select site_id from week_stops where plan_id = :plan)""")
            .list("closed", """
                    select c.site_id, c.from_date, c.until_date, c.reason from closed_periods c
                    join week_plans p on c.from_date <= p.monday + 6 and c.until_date >= p.monday
                    where p.id = :plan and c.site_id in (select site_id from week_stops where plan_id = :plan)""")
            .list("needs", NEEDS)
            .list("levels", """
                    select coalesce(sp.person_id, sp.depot_id) as owner_id, l.part_id, sum(l.quantity)::float8 as quantity
                    from stock_levels l join stock_places sp on sp.id = l.place_id group by 1, 2""")
            .list("calls", OpenCalls.OF_PLAN);

    /** What belongs to works of some days; all else is left to its tasks. */
    private Map<UUID, Works> works(List<Stop> stops) {
        List<UUID> visits = stops.stream()
                .filter(stop -> !stop.over() && Bundle.isWorks(stop.kind()))
                .map(Stop::visitId)
                .filter(Objects::nonNull)
                .map(visit -> (UUID) Objects.requireNonNull(visit))
                .toList();
        if (visits.isEmpty()) {
            return Map.of();
        }
        return works.of(visits).stream().collect(Collectors.toMap(Works::visit, Function.identity()));
    }

    private Rules rules(Lists lists, List<Stop> stops) {
        return new Rules(
                new Hours(
                        lists.access().stream().collect(Collectors.groupingBy(Access::siteId)),
                        lists.closed().stream().collect(Collectors.groupingBy(Closed::siteId))),
                new Supplies(lists.needs().stream().collect(Collectors.groupingBy(Need::stopId)), lists.levels()),
                lists.skills().stream().collect(Collectors.toMap(Skill::code, Skill::name)),
                works(stops),
                Map.of());
    }
}
