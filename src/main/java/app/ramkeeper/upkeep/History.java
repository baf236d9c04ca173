package app.ramkeeper.upkeep;

import app.ramkeeper.upkeep.rules.Idle;
import app.ramkeeper.upkeep.rules.Waiting;
import app.ramkeeper.upkeep.rules.Work;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads what reports in force say, and when rams stood still; each in one statement for a whole batch. */
@Repository
class History {

    private final JdbcClient jdbc;

    History(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * One thing said of an install or of a pump.
     *
     * @param pump null: said of the install as a whole, or of its only pump
     */
    record Said(UUID install, @Nullable UUID pump, UUID kind, Work work) {

        /** True if it speaks of this task, whose kind these kinds do too when they are done. */
        boolean speaksOf(TaskRow task, Set<UUID> includers) {
            boolean sameKind =
                    work.outcome() == Work.Outcome.DONE ? includers.contains(kind) : kind.equals(task.kind());
            return sameKind && samePlace(task);
        }

        private boolean samePlace(TaskRow task) {
            if (task.pump() == null || pump == null) {
                return install.equals(task.install())
                        && (task.pump() == null
                                || task.fittedOn() == null
                                || !work.on().isBefore(task.fittedOn()));
            }
            return pump.equals(task.pump());
        }
    }

    /** Works, and parts that reset a task where they were fitted. */
    List<Said> said(Collection<UUID> installs, Collection<UUID> pumps) {
        UUID[] places = installs.toArray(UUID[]::new);
        UUID[] things = pumps.toArray(UUID[]::new);
        return jdbc.sql("""
                        with works as (
                          select report_id, install_id, pump_id, task_kind_id, outcome, reason, look_again_on, about, note
                          from report_works where install_id = any(:places) and outcome <> 'NOT_NEEDED'
                          union
                          select report_id, install_id, pump_id, task_kind_id, outcome, reason, look_again_on, about, note
                          from report_works where pump_id = any(:things) and outcome <> 'NOT_NEEDED'),
                        fitted as (
                          select report_id, install_id, pump_id, part_id, position from parts_used
                          where install_id = any(:places) and position is not null and part_id is not null
                          union
                          select report_id, install_id, pump_id, part_id, position from parts_used
                          where pump_id = any(:things) and position is not null and part_id is not null)
                        select r.id, r.attended_on, w.install_id, w.pump_id, w.task_kind_id, w.outcome,
                               coalesce(w.reason, r.reason) as reason, w.look_again_on, w.about, coalesce(w.note, r.note) as note
                        from works w join current_reports r on r.id = w.report_id
                        union all
                        select r.id, r.attended_on, f.install_id, f.pump_id, tp.task_kind_id, 'DONE', null, null, false, null
                        from fitted f join current_reports r on r.id = f.report_id
                        join parts p on p.id = f.part_id
                        join task_kind_parts tp on tp.part_kind = p.kind and tp.position = f.position""")
                .param("places", places)
                .param("things", things)
                .query((row, number) -> new Said(
                        row.getObject("install_id", UUID.class),
                        row.getObject("pump_id", UUID.class),
                        row.getObject("task_kind_id", UUID.class),
                        new Work(
                                row.getObject("id", UUID.class),
                                row.getObject("attended_on", LocalDate.class),
                                Work.Outcome.valueOf(row.getString("outcome")),
                                row.getBoolean("about"),
                                row.getObject("look_again_on", LocalDate.class),
                                whose(row.getString("reason")),
                                cut(row.getString("note")))))
                .list();
    }

    /** When the rams of these installs stood still or slept. */
    Map<UUID, List<Idle>> idles(Collection<UUID> installs) {
        Map<UUID, List<Idle>> idles = new HashMap<>();
        jdbc.sql("""
                        select install_id, coalesce(from_date, date '1900-01-01') as from_date, until_date,
                               state in ('DORMANT', 'NO_WATER') as asleep
                        from running_states where install_id = any(?) and state in ('STOPPED', 'DORMANT', 'NO_WATER')""").param(installs.toArray(UUID[]::new)).query(row -> {
            idles.computeIfAbsent(row.getObject("install_id", UUID.class), install -> new ArrayList<>())
                    .add(new Idle(
                            row.getObject("from_date", LocalDate.class),
                            row.getObject("until_date", LocalDate.class),
                            row.getBoolean("asleep")));
        });
        return idles;
    }

    private static Waiting whose(@Nullable String reason) {
        return switch (reason == null ? "" : reason) {
            case "LOCKED_GATE", "WEATHER" -> Waiting.CANNOT_REACH;
            case "REFUSED" -> Waiting.REFUSED;
            case "PARTS" -> Waiting.PARTS;
            default -> Waiting.OURS;
        };
    }

    private static @Nullable String cut(@Nullable String note) {
        return note == null || note.length() <= 2000 ? note : note.substring(0, 2000);
    }
}
