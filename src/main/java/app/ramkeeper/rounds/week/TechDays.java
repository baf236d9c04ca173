package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.People.DepotCard;
import app.ramkeeper.identity.People.Leave;
import app.ramkeeper.identity.People.PersonCard;
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

    private record Kept(
            UUID personId,
            LocalDate day,
            @Nullable UUID mateId,
            boolean locked,
            @Nullable Integer lateAt) {}

    /** Everybody's days of the week, by name; also days off on which somebody has a visit. */
    List<TechDay> of(WeekPlan plan, List<Stop> stops) {
        Facts facts = new Facts(plan);
        Set<RoundKey> used = stops.stream()
                .filter(Stop::placed)
                .map(s -> new RoundKey(
                        java.util.Objects.requireNonNull(s.personId()), java.util.Objects.requireNonNull(s.day())))
                .collect(Collectors.toSet());
        Map<UUID, PersonCard> team = new java.util.LinkedHashMap<>();
        people.fieldPeopleOn(plan.monday()).forEach(p -> team.put(p.id(), p));
        used.stream()
                .map(RoundKey::person)
                .filter(id -> !team.containsKey(id))
                .forEach(id ->
                        people.byId(new app.ramkeeper.identity.PersonId(id)).ifPresent(p -> team.put(id, p)));
        List<TechDay> days = new ArrayList<>();
        for (PersonCard person : team.values()) {
            for (LocalDate day : plan.days()) {
                TechDay made = facts.day(person, day);
                if (made.away() == null
                        || used.contains(made.key())
                        || !made.away().equals(Facts.OFF)) {
                    days.add(made);
                }
            }
        }
        return days;
    }

    /** What one week's days are made of. */
    private final class Facts {
        static final String OFF = "does not work on that weekday";

        private final Map<UUID, Map<Integer, Shift>> own = new HashMap<>();
        private final Map<Integer, Shift> usual = new HashMap<>();
        private final Map<LocalDate, String> holidays;
        private final List<Leave> leave;
        private final Map<UUID, DepotCard> depots;
        private final Map<UUID, HomePlace> homes;
        private final Map<UUID, Set<String>> skills = new HashMap<>();
        private final Map<RoundKey, Kept> kept;
        private final Map<UUID, String> names;

        Facts(WeekPlan plan) {
            shifts().forEach(s -> {
                if (s.personId() == null) {
                    usual.put(s.weekday(), s);
                } else {
                    own.computeIfAbsent(s.personId(), p -> new HashMap<>()).put(s.weekday(), s);
                }
            });
            holidays = jdbc
                    .sql("select day, name from public_holidays where day between ? and ?")
                    .param(plan.monday())
                    .param(plan.sunday())
                    .query((row, n) -> Map.entry(row.getObject(1, LocalDate.class), row.getString(2)))
                    .list()
                    .stream()
                    .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
            leave = people.leaveBetween(plan.monday(), plan.sunday());
            depots = people.depots().stream().collect(Collectors.toMap(DepotCard::id, Function.identity()));
            homes = jdbc
                    .sql("select person_id, starts_at, ends_at, latitude, longitude from round_places")
                    .query(HomePlace.class)
                    .list()
                    .stream()
                    .collect(Collectors.toMap(HomePlace::personId, Function.identity()));
            jdbc.sql("select person_id, skill from person_skills").query(row -> {
                skills.computeIfAbsent(row.getObject(1, UUID.class), p -> new HashSet<>())
                        .add(row.getString(2));
            });
            kept = jdbc
                    .sql("select person_id, day, mate_id, locked, late_at from week_rounds where plan_id = ?")
                    .param(plan.id())
                    .query(Kept.class)
                    .list()
                    .stream()
                    .collect(Collectors.toMap(k -> new RoundKey(k.personId(), k.day()), Function.identity()));
            names = people.activeOn(plan.monday()).stream().collect(Collectors.toMap(PersonCard::id, PersonCard::name));
        }

        private List<Shift> shifts() {
            return jdbc.sql("""
                            select person_id, weekday, (extract(epoch from from_time) / 60)::int as "from",
                              (extract(epoch from until_time) / 60)::int as until, longest_minutes, break_minutes from shifts""").query(Shift.class).list();
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
                    away(person, day, shift, mate),
                    shift == null ? 450 : shift.from(),
                    shift == null ? 1020 : shift.until(),
                    shift == null ? 540 : shift.longestMinutes(),
                    shift == null ? 30 : shift.breakMinutes(),
                    home != null && home.startsAt().equals("HOME") ? home.position() : depot,
                    home != null && home.endsAt().equals("HOME") ? home.position() : depot,
                    trained,
                    person.depotId(),
                    mate,
                    mate == null ? null : names.getOrDefault(mate, "somebody"),
                    round != null && round.locked(),
                    round == null ? null : round.lateAt());
        }

        private @Nullable Position depot(PersonCard person) {
            DepotCard depot = person.depotId() == null ? null : depots.get(person.depotId());
            return depot == null || depot.latitude() == null || depot.longitude() == null
                    ? null
                    : new Position(depot.latitude(), depot.longitude());
        }

        private @Nullable String away(PersonCard person, LocalDate day, @Nullable Shift shift, @Nullable UUID mate) {
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
            if (mate != null && onLeave(mate, day)) {
                return "would go with " + names.getOrDefault(mate, "somebody") + ", who is on leave";
            }
            return kept.values().stream()
                    .filter(k -> person.id().equals(k.mateId()) && k.day().equals(day))
                    .findFirst()
                    .map(k -> "rides with " + names.getOrDefault(k.personId(), "somebody"))
                    .orElse(null);
        }

        private boolean onLeave(UUID person, LocalDate day) {
            return leave.stream()
                    .anyMatch(l ->
                            l.personId().equals(person) && !day.isBefore(l.fromDate()) && !day.isAfter(l.untilDate()));
        }
    }
}
