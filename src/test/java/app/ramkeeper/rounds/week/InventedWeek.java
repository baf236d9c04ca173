package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.travel.HillRoads;
import app.ramkeeper.rounds.week.Bundle.Appointment;
import app.ramkeeper.rounds.week.Bundle.SiteTerms;
import app.ramkeeper.rounds.week.Supplies.Need;
import app.ramkeeper.rounds.week.Supplies.OnHand;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A week of real size out of a seed: sites in clusters and apart along hill roads, due tasks bundled as the application does it,
 * eight technicians on five days with skills, vans, crews of two, access hours, closed days, agreed visits and marked catchments.
 */
public final class InventedWeek {

    public static final LocalDate MONDAY = LocalDate.of(2026, 11, 30);
    private static final int TEAM = 8;
    private static final int CLUSTERS = 14;
    private static final LocalTime[] TIMES = {
        LocalTime.of(9, 0), LocalTime.of(10, 30), LocalTime.of(13, 30), LocalTime.of(15, 0)
    };

    private record Kind(
            UUID id,
            String name,
            int minutes,
            int crew,
            double weight,
            int window,
            @Nullable String skill) {}

    private final SplittableRandom random;
    private final Map<UUID, Double> burden = new HashMap<>();
    private final Map<UUID, List<DueRow>> tasks = new HashMap<>();
    private final List<Kind> kinds;
    private final Map<UUID, Set<String>> skillsOfKind = new HashMap<>();
    private final UUID rubber;
    private final UUID[] team = new UUID[TEAM];
    private final UUID[] depots = new UUID[2];
    private final Map<UUID, List<Hours.Access>> access = new HashMap<>();
    private final Map<UUID, List<Hours.Closed>> closed = new HashMap<>();
    private final Map<UUID, List<Need>> needs = new HashMap<>();
    private final List<double[]> clusters = new ArrayList<>();
    private final Week week;

    public InventedWeek(long seed, int candidates) {
        random = new SplittableRandom(seed);
        rubber = id();
        kinds = List.of(
                kind("Clean strainer", 15, 1, 1, 30, null),
                kind("Replace valve rubber", 35, 1, 5, 60, null),
                kind("Look at delivery valve", 30, 1, 3, 60, null),
                kind("Check pre-charge", 20, 1, 2, 60, null),
                kind("Year's service", 60, 1, 3, 90, null),
                kind("Lift out and clean", 90, 2, 2, 120, "LIFTING"),
                kind("Enter the chamber", 45, 2, 2, 120, "CONFINED_SPACE"));
        for (int t = 0; t < TEAM; t++) {
            team[t] = id();
            burden.put(team[t], 0.5 + 0.5 * random.nextDouble());
        }
        depots[0] = id();
        depots[1] = id();
        for (int c = 0; c < CLUSTERS; c++) {
            clusters.add(new double[] {random.nextInt(HillRoads.VALLEYS), side(), 3 + 25 * random.nextDouble()});
        }
        List<Stop> stops = new ArrayList<>();
        for (int i = 0; i < candidates; i++) {
            stops.add(stop(i));
        }
        WeekPlan plan = new WeekPlan(id(), MONDAY, 1, null, null, null, null);
        Rules rules = new Rules(new Hours(access, closed), supplies(), Map.of());
        week = new Week(plan, stops, days(), new Drive(new HillRoads(), rules));
    }

    public Week week() {
        return week;
    }

    /** How much each had to do of late. */
    public Map<UUID, Double> burden() {
        return burden;
    }

    /** Days past the end of windows, summed over visits (by the earliest window of each), and over tasks by the weight of their kind. */
    public record Lateness(long days, double weighted) {}

    /** Until the day a visit stands on; until the next Monday for those left out. */
    public Lateness lateness(Week placed) {
        long days = 0;
        double weighted = 0;
        for (Stop stop : placed.stops()) {
            LocalDate on = stop.day() == null ? MONDAY.plusDays(7) : stop.day();
            long most = 0;
            for (DueRow task : tasks.get(stop.id())) {
                long late = Math.max(0, ChronoUnit.DAYS.between(task.windowUntil(), on));
                most = Math.max(most, late);
                weighted += task.weight() * late;
            }
            days += most;
        }
        return new Lateness(days, weighted);
    }

    /** The end of the visit's earliest window. */
    public LocalDate latest(Stop stop) {
        return tasks.get(stop.id()).stream()
                .map(DueRow::windowUntil)
                .min(Comparator.naturalOrder())
                .orElseThrow();
    }

    private UUID id() {
        return new UUID(random.nextLong(), random.nextLong());
    }

    private int side() {
        return random.nextBoolean() ? 1 : -1;
    }

    private Kind kind(String name, int minutes, int crew, double weight, int window, @Nullable String skill) {
        Kind kind = new Kind(id(), name, minutes, crew, weight, window, skill);
        skillsOfKind.put(kind.id(), skill == null ? Set.of() : Set.of(skill));
        return kind;
    }

    private Position place() {
        int valley = random.nextInt(HillRoads.VALLEYS);
        double aside = side() * (1 + 28 * random.nextDouble());
        double off = 5 * (random.nextDouble() - 0.5);
        if (random.nextInt(10) < 7) {
            double[] cluster = clusters.get(random.nextInt(CLUSTERS));
            valley = (int) cluster[0];
            aside = cluster[1] * Math.max(0.6, cluster[2] + 3 * (random.nextDouble() + random.nextDouble() - 1));
        }
        return HillRoads.at(HillRoads.mouth(valley) + off, aside);
    }

    private Stop stop(int number) {
        UUID site = id();
        UUID stop = id();
        Position where = place();
        boolean agreed = number % 25 == 0;
        LocalDate day = MONDAY.plusDays(random.nextInt(5));
        LocalTime from = agreed && number % 50 == 0 ? TIMES[random.nextInt(TIMES.length)] : null;
        Appointment visit = agreed
                ? new Appointment(
                        id(), site, "SERVICE", day, from, 20, "CONFIRMED", "PLANNED", null, null, 1, null, true)
                : null;
        Bundle bundle = new Bundle(site, visit, MONDAY);
        tasks(bundle, site, where);
        SiteTerms terms = new SiteTerms(site, random.nextInt(6), false, false, false);
        tasks.put(stop, bundle.tasks);
        boolean marked = random.nextInt(100) < 3;
        if (!agreed) {
            hours(site);
            if (bundle.tasks.stream()
                            .anyMatch(t -> t.kindId().equals(kinds.get(1).id()))
                    && random.nextInt(3) == 0) {
                needs.put(stop, List.of(new Need(stop, rubber, "Valve rubber", 1)));
            }
        }
        UUID known = random.nextInt(10) < 7 ? team[random.nextInt(TEAM)] : null;
        return stop(stop, "Site " + number, where, marked, bundle, terms, known);
    }

    private Stop stop(
            UUID id,
            String name,
            Position where,
            boolean marked,
            Bundle bundle,
            SiteTerms terms,
            @Nullable UUID known) {
        Set<String> skills = bundle.skills(terms, skillsOfKind);
        Appointment visit = bundle.visit;
        return new Stop(
                id,
                bundle.site,
                name,
                null,
                where.latitude(),
                where.longitude(),
                marked ? "WEED" : "CLEAN",
                marked ? team[0] : null,
                visit == null ? null : visit.id(),
                visit == null ? "SERVICE" : visit.kind(),
                bundle.minutes(terms, Map.of()).given(),
                bundle.crew(terms, skills),
                String.join(",", skills),
                bundle.pressing(),
                visit == null ? null : visit.plannedOn(),
                visit == null ? null : visit.plannedFrom(),
                null,
                bundle.worth(),
                bundle.worthADay(),
                bundle.why(),
                bundle.dueOn(),
                bundle.lateFrom(),
                false,
                null,
                null,
                null,
                false,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                visit == null ? null : "PLANNED",
                visit == null ? null : visit.answer(),
                null,
                null,
                false,
                "tasks",
                known,
                null,
                null,
                false,
                null,
                null);
    }

    /** The week once it is published, and somebody has rung: no water. */
    public Week withCallOut(Week placed) {
        UUID site = id();
        Appointment call = new Appointment(
                id(), site, "CALL_OUT", null, null, 60, "NONE", "PLANNED", null, null, 1, "no water", false);
        Stop stop = stop(
                id(),
                "Dry farm",
                place(),
                false,
                new Bundle(site, call, MONDAY),
                new SiteTerms(site, 2, false, false, false),
                null);
        List<Stop> stops = new ArrayList<>(placed.stops());
        stops.add(stop);
        Instant then = MONDAY.minusDays(3).atStartOfDay(ZoneOffset.UTC).toInstant();
        return new Week(
                new WeekPlan(placed.plan().id(), MONDAY, 2, 2, then, then, null),
                stops,
                placed.rounds(),
                placed.drive());
    }

    /** The week with a technician ill from a day on. */
    public Week ill(Week placed, UUID who, LocalDate from) {
        List<TechDay> days = placed.rounds().stream()
                .map(d -> d.personId().equals(who) && !d.day().isBefore(from) ? onLeave(d) : d)
                .toList();
        return new Week(placed.plan(), placed.stops(), days, placed.drive());
    }

    private static TechDay onLeave(TechDay d) {
        return new TechDay(
                d.personId(),
                d.name(),
                d.day(),
                "is on leave",
                d.from(),
                d.until(),
                d.longest(),
                d.breakMinutes(),
                d.start(),
                d.end(),
                d.skills(),
                d.depotId(),
                d.mateId(),
                d.mate(),
                d.locked(),
                d.lateAt());
    }

    /** One or two tasks; of a visit's first a quarter is pressing, a fifth only soon. */
    private void tasks(Bundle bundle, UUID site, Position where) {
        UUID install = id();
        int many = 1 + random.nextInt(2);
        Set<Kind> taken = new HashSet<>();
        for (int i = 0; i < many; i++) {
            boolean plain = i > 0 || bundle.visit != null || random.nextInt(100) >= 8;
            Kind kind = plain ? kinds.get(random.nextInt(5)) : kinds.get(5 + random.nextInt(2));
            if (taken.add(kind)) {
                int chance = i == 0 ? random.nextInt(100) : 25 + random.nextInt(75);
                int until = chance < 12
                        ? -1 - random.nextInt(20)
                        : chance < 25
                                ? random.nextInt(7)
                                : chance < 80
                                        ? 7 + random.nextInt(kind.window() - 7)
                                        : kind.window() + 7 + random.nextInt(20);
                LocalDate end = MONDAY.plusDays(until);
                bundle.tasks.add(new DueRow(
                        id(),
                        site,
                        "Site",
                        install,
                        null,
                        kind.id(),
                        kind.name(),
                        kind.minutes(),
                        kind.crew(),
                        kind.weight(),
                        end.minusDays(kind.window() / 2),
                        end.minusDays(kind.window()),
                        end,
                        null,
                        where.latitude(),
                        where.longitude()));
            }
        }
    }

    private void hours(UUID site) {
        int chance = random.nextInt(100);
        int from = chance < 15 ? 8 * 60 : 13 * 60;
        int until = chance < 15 ? 12 * 60 : 17 * 60;
        if (chance < 30) {
            List<Hours.Access> rows = new ArrayList<>();
            for (int day = 1; day <= (chance < 25 ? 5 : 3); day++) {
                rows.add(new Hours.Access(site, day, chance < 25 ? from : 7 * 60, chance < 25 ? until : 18 * 60));
            }
            access.put(site, rows);
        } else if (chance < 34) {
            LocalDate first = MONDAY.plusDays(random.nextInt(4));
            closed.put(site, List.of(new Hours.Closed(site, first, first.plusDays(1), "lambing")));
        }
    }

    /** The rubber lies in the first depot and in two vans. */
    private Supplies supplies() {
        List<OnHand> levels = List.of(
                new OnHand(depots[0], rubber, 40), new OnHand(team[4], rubber, 5), new OnHand(team[5], rubber, 5));
        return new Supplies(needs, levels);
    }

    private List<TechDay> days() {
        List<TechDay> days = new ArrayList<>();
        UUID mate = id();
        for (int t = 0; t < TEAM; t++) {
            int depot = t < TEAM / 2 ? 0 : 1;
            boolean home = t % 4 == 3;
            Position start = home
                    ? HillRoads.at(HillRoads.mouth(random.nextInt(HillRoads.VALLEYS)), side() * 4.0)
                    : HillRoads.at(depot == 0 ? 22 : 58, 0);
            Set<String> skills = new HashSet<>();
            if (t % 4 == 0) {
                skills.add("LIFTING");
                skills.add("CONFINED_SPACE");
            } else if (t % 4 == 1) {
                skills.add("LIFTING");
            }
            for (int day = 0; day < 5; day++) {
                boolean two = t == 0 && day % 2 == 0 || t == 4 && day % 2 == 1;
                days.add(new TechDay(
                        team[t],
                        "Technician " + (t + 1),
                        MONDAY.plusDays(day),
                        null,
                        t == 6 ? 480 : 450,
                        t == 6 ? 960 : 1020,
                        540,
                        30,
                        start,
                        start,
                        skills,
                        depots[depot],
                        two ? mate : null,
                        two ? "Mate" : null,
                        false,
                        null));
            }
        }
        return days;
    }
}
