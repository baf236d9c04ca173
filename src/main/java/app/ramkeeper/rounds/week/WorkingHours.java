package app.ramkeeper.rounds.week;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The company's usual working hours by weekday, and its public holidays. */
@Service
@ForOffice
@Transactional
public class WorkingHours {

    private final JdbcClient jdbc;

    WorkingHours(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A weekday's hours; Monday is 1. A weekday without a row is off. */
    public record Day(int weekday, LocalTime fromTime, LocalTime untilTime, int longestMinutes, int breakMinutes) {}

    /** A day on which nobody works. */
    public record Holiday(LocalDate day, String name) {}

    @Transactional(readOnly = true)
    public List<Day> usual() {
        return jdbc.sql("""
                        select weekday, from_time, until_time, longest_minutes, break_minutes from shifts where person_id is null
                        order by weekday""").query(Day.class).list();
    }

    @Transactional(readOnly = true)
    public List<Holiday> holidays() {
        return jdbc.sql("select day, name from public_holidays order by day desc limit 200")
                .query(Holiday.class)
                .list();
    }

    /** Replaces a weekday's hours; null makes it a day off. */
    public void change(int weekday, @Nullable Day day) {
        if (day == null) {
            jdbc.sql("delete from shifts where person_id is null and weekday = ?")
                    .param(weekday)
                    .update();
            return;
        }
        jdbc.sql("""
                        insert into shifts (id, weekday, from_time, until_time, longest_minutes, break_minutes)
                        values (:id, :weekday, :from, :until, :longest, :break)
                        on conflict (person_id, weekday) do update set from_time = excluded.from_time, until_time = excluded.until_time,
                          longest_minutes = excluded.longest_minutes, break_minutes = excluded.break_minutes, version = shifts.version + 1""")
                .param("id", Uuids.next())
                .param("weekday", weekday)
                .param("from", day.fromTime())
                .param("until", day.untilTime())
                .param("longest", day.longestMinutes())
                .param("break", day.breakMinutes())
                .update();
    }

    /** Adds a holiday or gives it another name. */
    public void addHoliday(LocalDate day, String name) {
        jdbc.sql(
                        "insert into public_holidays (day, name) values (?, ?) on conflict (day) do update set name = excluded.name")
                .params(day, name)
                .update();
    }

    public void removeHoliday(LocalDate day) {
        jdbc.sql("delete from public_holidays where day = ?").param(day).update();
    }
}
