package app.ramkeeper.rounds.week;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.RoundsSettings;
import app.ramkeeper.rounds.week.Horizon.Outlook;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The eight weeks from a Monday on: who works how long, what is planned already, and which week suits each named task best. */
@Service
@ForOffice
@Transactional(readOnly = true)
public class LookAhead {

    private final DueTasks due;
    private final TechDays techDays;
    private final RoundsSettings settings;
    private final JdbcClient jdbc;

    LookAhead(DueTasks due, TechDays techDays, RoundsSettings settings, JdbcClient jdbc) {
        this.due = due;
        this.techDays = techDays;
        this.settings = settings;
        this.jdbc = jdbc;
    }

    /** How the weeks look and what is moved between them. */
    public Outlook from(LocalDate monday) {
        return Horizon.from(
                monday,
                due.opening(monday, monday.plusDays(7L * Horizon.WEEKS - 1)),
                week -> hours(week) - planned(week, monday));
    }

    /** What technicians work in a week, less breaks and the room for call-outs. */
    private double hours(LocalDate monday) {
        WeekPlan week = new WeekPlan(new UUID(0, 0), monday, 0, null, null, null, null);
        return techDays.of(week, List.of()).days().stream()
                .filter(TechDay::works)
                .mapToDouble(day -> Math.min(day.longest(), day.until() - day.from() - day.breakDue())
                        - settings.callOutRoom().toMinutes())
                .sum();
    }

    /** Visits of that week without tasks that are counted by themselves. */
    private double planned(LocalDate week, LocalDate first) {
        return jdbc.sql("""
                        select coalesce(sum(v.minutes + :drive::int), 0) from visits v where v.state = 'PLANNED' and v.planned_on between :monday and :sunday
                          and (v.planned_on > :first::date + 6 or not exists (select from visit_tasks t where t.visit_id = v.id))""")
                .param("drive", (int) Horizon.DRIVE)
                .param("monday", week)
                .param("sunday", week.plusDays(6))
                .param("first", first)
                .query(Double.class)
                .single();
    }
}
