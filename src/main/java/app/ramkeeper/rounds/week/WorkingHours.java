package app.ramkeeper.rounds.week;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The company's usual working hours by weekday, a technician's own instead, and public holidays. */
@Service
@ForOffice
@Transactional
public class WorkingHours {

    private final JdbcClient jdbc;
    private final People people;
    private final Clock clock;

    WorkingHours(JdbcClient jdbc, People people, Clock clock) {
        this.jdbc = jdbc;
        this.people = people;
        this.clock = clock;
    }

    /** A weekday's hours; Monday is 1. A weekday without a row is off. */
    public record Day(int weekday, LocalTime fromTime, LocalTime untilTime, int longestMinutes, int breakMinutes) {}

    /** A day on which nobody works. */
    public record Holiday(LocalDate day, String name) {}

    /** Somebody who goes out, with their own hours; without any they work the company's. */
    public record Worker(UUID personId, String name, List<Day> own) {

        /** "Mon, Tue 07:30–15:00; Wed 09:00–12:00", in the week's order. */
        public String words() {
            Map<String, List<String>> days = new LinkedHashMap<>();
            own.forEach(
                    day -> days.computeIfAbsent(day.fromTime() + "\u2013" + day.untilTime(), times -> new ArrayList<>())
                            .add(DayOfWeek.of(day.weekday()).getDisplayName(TextStyle.SHORT, Locale.UK)));
            return days.entrySet().stream()
                    .map(entry -> String.join(", ", entry.getValue()) + " " + entry.getKey())
                    .collect(Collectors.joining("; "));
        }
    }

    @Transactional(readOnly = true)
    public List<Day> usual() {
        return of(null);
    }

    /** A person's own hours; none if they work the company's. */
    @Transactional(readOnly = true)
    public List<Day> own(PersonId person) {
        return of(person);
    }

    private List<Day> of(@Nullable PersonId person) {
        return jdbc.sql("""
                        select weekday, from_time, until_time, longest_minutes, break_minutes from shifts
                        where person_id is not distinct from :person::uuid order by weekday""")
                .param("person", person == null ? null : person.value())
                .query(Day.class)
                .list();
    }

    /** Everybody who goes out today, by name. */
    @Transactional(readOnly = true)
    public List<Worker> team() {
        record Own(
                UUID personId,
                int weekday,
                LocalTime fromTime,
                LocalTime untilTime,
                int longestMinutes,
                int breakMinutes) {}
        Map<UUID, List<Day>> own = jdbc.sql("""
                        select person_id, weekday, from_time, until_time, longest_minutes, break_minutes from shifts
                        where person_id is not null order by weekday""").query(Own.class).list().stream()
                .collect(Collectors.groupingBy(
                        Own::personId,
                        Collectors.mapping(
                                o -> new Day(
                                        o.weekday(), o.fromTime(), o.untilTime(), o.longestMinutes(), o.breakMinutes()),
                                Collectors.toList())));
        return people.fieldPeopleOn(LocalDate.now(clock), own.keySet()).stream()
                .map(person -> new Worker(person.id(), person.name(), own.getOrDefault(person.id(), List.of())))
                .toList();
    }

    @Transactional(readOnly = true)
    public List<Holiday> holidays() {
        return jdbc.sql("select day, name from public_holidays order by day desc limit 200")
                .query(Holiday.class)
                .list();
    }

    /** What a form carries of the hours that it was made from, so that nobody saves over somebody else's change. */
    public static String edition(List<Day> days) {
        return days.stream()
                .map(day -> "%d %s-%s %d %d"
                        .formatted(
                                day.weekday(),
                                day.fromTime(),
                                day.untilTime(),
                                day.longestMinutes(),
                                day.breakMinutes()))
                .collect(Collectors.joining(", "));
    }

    /**
     * Replaces the company's hours; a weekday that is not named is off.
     *
     * @param seen the edition that was looked at
     * @return false if somebody else has changed them since; then nothing is done
     */
    public boolean change(List<Day> days, String seen) {
        return change(null, days, seen);
    }

    /**
     * Replaces a person's own hours; a weekday that is not named is off, and none at all gives them the company's.
     *
     * @param seen the edition that was looked at
     * @return false if somebody else has changed them since; then nothing is done
     */
    public boolean changeOwn(PersonId person, List<Day> days, String seen) {
        return change(person, days, seen);
    }

    private boolean change(@Nullable PersonId person, List<Day> days, String seen) {
        // one after the other: what is not there yet cannot be held by its row
        jdbc.sql("lock table shifts in share row exclusive mode").update();
        List<Day> now = of(person);
        if (now.equals(days)) {
            return true;
        }
        if (!edition(now).equals(seen)) {
            return false;
        }
        UUID who = person == null ? null : person.value();
        jdbc.sql("delete from shifts where person_id is not distinct from :person::uuid and weekday <> all(:kept)")
                .param("person", who)
                .param("kept", days.stream().map(Day::weekday).toArray(Integer[]::new))
                .update();
        days.forEach(day -> jdbc.sql("""
                        insert into shifts as s (id, person_id, weekday, from_time, until_time, longest_minutes, break_minutes)
                        values (:id, :person, :weekday, :from, :until, :longest, :break)
                        on conflict (person_id, weekday) do update set from_time = excluded.from_time, until_time = excluded.until_time,
                          longest_minutes = excluded.longest_minutes, break_minutes = excluded.break_minutes, version = s.version + 1
                        where (s.from_time, s.until_time, s.longest_minutes, s.break_minutes)
                          is distinct from (excluded.from_time, excluded.until_time, excluded.longest_minutes, excluded.break_minutes)""")
                .param("id", Uuids.next())
                .param("person", who)
                .param("weekday", day.weekday())
                .param("from", day.fromTime())
                .param("until", day.untilTime())
                .param("longest", day.longestMinutes())
                .param("break", day.breakMinutes())
                .update());
        return true;
    }

    /**
     * Adds a holiday.
     *
     * @return the name under which the day is one already; then nothing is done
     */
    public Optional<String> addHoliday(LocalDate day, String name) {
        int added = jdbc.sql("insert into public_holidays (day, name) values (?, ?) on conflict (day) do nothing")
                .params(day, name)
                .update();
        return added > 0
                ? Optional.empty()
                : jdbc.sql("select name from public_holidays where day = ? and name <> ?")
                        .params(day, name)
                        .query(String.class)
                        .optional();
    }

    public void removeHoliday(LocalDate day) {
        jdbc.sql("delete from public_holidays where day = ?").param(day).update();
    }
}
