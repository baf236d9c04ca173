package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.People.Leave;
import app.ramkeeper.identity.People.PersonCard;
import app.ramkeeper.shared.OneStatement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Who works when in a week: shifts, leave, holidays, skills, and where each day begins. */
@Component
class TechDays {

    private final People people;
    private final JdbcClient jdbc;

    TechDays(People people, JdbcClient jdbc) {
        this.people = people;
        this.jdbc = jdbc;
    }

    /** Working hours of a weekday; without a person the company's usual ones. */
    record Shift(@Nullable UUID personId, int weekday, int from, int until, int longestMinutes, int breakMinutes) {}

    /** Where somebody's day begins and ends when that is not the depot. */
    record HomePlace(UUID personId, String startsAt, String endsAt, double latitude, double longitude) {
        Position position() {
            return new Position(latitude, longitude);
        }
    }

    /** A round of the plan as the office has shaped it. */
    record Kept(
            UUID personId,
            String name,
            LocalDate day,
            @Nullable UUID mateId,
            @Nullable String mate,
            boolean locked,
            @Nullable Integer lateAt) {}

    record Holiday(LocalDate day, String name) {}

    record Trained(UUID personId, String skill) {}

    record Depot(UUID id, double latitude, double longitude) {}

    /** What the days of one week are made of. */
    record Lists(
            List<Shift> shifts,
            List<Holiday> holidays,
            List<Leave> leave,
            List<Depot> depots,
            List<HomePlace> homes,
            List<Trained> trained,
            List<Kept> rounds) {}

    private static final OneStatement LISTS = new OneStatement()
            .list("shifts", """
                    select person_id, weekday, (extract(epoch from from_time) / 60)::int as "from",
                      (extract(epoch from until_time) / 60)::int as until, longest_minutes, break_minutes from shifts""")
            .list("holidays", "select day, name from public_holidays where day between :monday and :sunday")
            .list(
                    "leave",
                    "select person_id, from_date, until_date from person_leave where from_date <= :sunday and until_date >= :monday")
            .list("depots", "select id, latitude, longitude from depots where latitude is not null")
            .list("homes", "select person_id, starts_at, ends_at, latitude, longitude from round_places")
            .list("trained", "select person_id, skill from person_skills")
            .list("rounds", """
                    select r.person_id, p.name, r.day, r.mate_id, m.name as mate, r.locked, r.late_at
                    from week_rounds r join people p on p.id = r.person_id left join people m on m.id = r.mate_id
                    where r.plan_id = :plan""");

    /**
     * Everybody's days of the week, by name; also days off on which somebody has a visit.
     *
     * @param nowhere the names of those who have neither depot nor place of their own, and so no rounds: as a rule people whom
     *     only an imported history names
     */
    record Team(List<TechDay> days, List<String> nowhere) {}

    Team of(WeekPlan plan, List<Stop> stops) {
        Facts facts = new Facts(LISTS.read(
                jdbc, Map.of("plan", plan.id(), "monday", plan.monday(), "sunday", plan.sunday()), Lists.class));
        Set<RoundKey> used = stops.stream()
                .filter(Stop::placed)
                .map(s -> new RoundKey(
                        java.util.Objects.requireNonNull(s.personId()), java.util.Objects.requireNonNull(s.day())))
                .collect(Collectors.toSet());
        Set<UUID> busy = used.stream().map(RoundKey::person).collect(Collectors.toSet());
        List<TechDay> days = new ArrayList<>();
        List<String> nowhere = new ArrayList<>();
        for (PersonCard person : people.fieldPeopleOn(plan.monday(), busy)) {
            if (facts.nowhere(person.id(), person.depotId()) && !busy.contains(person.id())) {
                nowhere.add(person.name());
                continue;
            }
            for (LocalDate day : plan.days()) {
                TechDay made = facts.day(person, day);
                if (made.away() == null
                        || used.contains(made.key())
                        || !made.away().equals(Facts.OFF)) {
                    days.add(made);
                }
            }
        }
        return new Team(days, nowhere);
    }

    /** What one week's days are made of. */
    private final class Facts {
        static final String OFF = "does not work on that weekday";

        private final Map<UUID, Map<Integer, Shift>> own = new HashMap<>();
        private final Map<Integer, Shift> usual = new HashMap<>();
        private final Map<LocalDate, String> holidays;
        private final List<Leave> leave;
        private final Map<UUID, Depot> depots;
        private final Map<UUID, HomePlace> homes;
        private final Map<UUID, Set<String>> skills;
        private final Map<RoundKey, Kept> kept;

        Facts(Lists lists) {
            lists.shifts().forEach(s -> {
                if (s.personId() == null) {
                    usual.put(s.weekday(), s);
                } else {
                    own.computeIfAbsent(s.personId(), p -> new HashMap<>()).put(s.weekday(), s);
                }
            });
            holidays = lists.holidays().stream().collect(Collectors.toMap(Holiday::day, Holiday::name));
            leave = lists.leave();
            depots = lists.depots().stream().collect(Collectors.toMap(Depot::id, Function.identity()));
            homes = lists.homes().stream().collect(Collectors.toMap(HomePlace::personId, Function.identity()));
            skills = lists.trained().stream()
                    .collect(Collectors.groupingBy(
                            Trained::personId, Collectors.mapping(Trained::skill, Collectors.toSet())));
            kept = lists.rounds().stream()
                    .collect(Collectors.toMap(k -> new RoundKey(k.personId(), k.day()), Function.identity()));
        }

        TechDay day(PersonCard person, LocalDate day) {
            Shift shift =
                    own.getOrDefault(person.id(), usual).get(day.getDayOfWeek().getValue());
            Kept round = kept.get(new RoundKey(person.id(), day));
            UUID mate = round == null ? null : round.mateId();
            Set<String> trained = new HashSet<>(skills.getOrDefault(person.id(), Set.of()));
            if (mate != null) {
                trained.addAll(skills.getOrDefault(mate, Set.of()));
            }
            HomePlace home = homes.get(person.id());
            Position depot = depot(person);
            return new TechDay(
                    person.id(),
                    person.name(),
                    day,
                    away(person, day, shift, round),
                    shift == null ? 450 : shift.from(),
                    shift == null ? 1020 : shift.until(),
                    shift == null ? 540 : shift.longestMinutes(),
                    shift == null ? 30 : shift.breakMinutes(),
                    home != null && home.startsAt().equals("HOME") ? home.position() : depot,
                    home != null && home.endsAt().equals("HOME") ? home.position() : depot,
                    trained,
                    person.depotId(),
                    mate,
                    round == null ? null : round.mate(),
                    round != null && round.locked(),
                    round == null ? null : round.lateAt());
        }

        /** Without a start, and nobody has given the person hours or company either. */
        boolean nowhere(UUID person, @Nullable UUID depot) {
            return depot == null
                    && !homes.containsKey(person)
                    && !own.containsKey(person)
                    && kept.values().stream().noneMatch(k -> person.equals(k.mateId()));
        }

        private @Nullable Position depot(PersonCard person) {
            Depot depot = person.depotId() == null ? null : depots.get(person.depotId());
            return depot == null ? null : new Position(depot.latitude(), depot.longitude());
        }

        private @Nullable String away(PersonCard person, LocalDate day, @Nullable Shift shift, @Nullable Kept round) {
            if (person.leftOn() != null && person.leftOn().isBefore(day)) {
                return "does not work here any more";
            }
            if (holidays.containsKey(day)) {
                return "is off: " + holidays.get(day);
            }
            if (onLeave(person.id(), day)) {
                return "is on leave";
            }
            if (shift == null) {
                return OFF;
            }
            if (round != null && round.mateId() != null && onLeave(round.mateId(), day)) {
                return "would go with " + round.mate() + ", who is on leave";
            }
            return kept.values().stream()
                    .filter(k -> person.id().equals(k.mateId()) && k.day().equals(day))
                    .findFirst()
                    .map(k -> "rides with " + k.name())
                    .orElse(null);
        }

        private boolean onLeave(UUID person, LocalDate day) {
            return leave.stream()
                    .anyMatch(l ->
                            l.personId().equals(person) && !day.isBefore(l.fromDate()) && !day.isAfter(l.untilDate()));
        }
    }
}
