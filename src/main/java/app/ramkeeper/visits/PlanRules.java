package app.ramkeeper.visits;

import app.ramkeeper.visits.ReportRefused.Problem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What a plan must keep. Nobody is sent alone into a confined chamber or to a heavy lift: that one blocks. */
@Component
class PlanRules {

    private final JdbcClient jdbc;

    PlanRules(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Problem> broken(PlanVisit plan, LocalDate today) {
        List<Problem> problems = new ArrayList<>();
        if (!knows(
                "select 1 from sites where id = :id and merged_into is null",
                plan.site().value())) {
            problems.add(new Problem("site", "This site is not in the register."));
        }
        if (plan.on() != null && (plan.on().isBefore(today) || plan.on().isAfter(today.plusYears(10)))) {
            problems.add(new Problem("on", "Give a day from today on, within ten years."));
        }
        if (plan.from() != null && plan.on() == null) {
            problems.add(new Problem("from", "A time of day needs a day."));
        }
        if (plan.minutes() < 5 || plan.minutes() > 1440) {
            problems.add(new Problem("minutes", "Give between 5 minutes and a day (1440)."));
        }
        if (plan.note() != null && plan.note().length() > ReportRules.NOTE) {
            problems.add(new Problem("note", "This text is too long: at most 10,000 characters."));
        }
        if (new HashSet<>(plan.people()).size() != plan.people().size()) {
            problems.add(new Problem("people", "A person is named twice."));
        }
        plan.people().stream()
                .filter(p -> !knows("select 1 from people where id = :id and left_on is null", p.value()))
                .forEach(p -> problems.add(new Problem("people", "This person does not work here.")));
        checkTasks(plan, problems);
        if (plan.people().size() == 1 && needsTwo(plan)) {
            problems.add(new Problem(
                    "people", "Nobody goes alone here: a confined chamber or a heavy lift needs a second person."));
        }
        return problems;
    }

    private void checkTasks(PlanVisit plan, List<Problem> problems) {
        for (PlanVisit.Task task : plan.tasks()) {
            boolean here = jdbc.sql("select 1 from installs where id = :id and site_id = :site")
                    .param("id", task.install().value())
                    .param("site", plan.site().value())
                    .query(Integer.class)
                    .optional()
                    .isPresent();
            if (!here
                    || !knows(
                            "select 1 from task_kinds where id = :id",
                            task.kind().value())) {
                problems.add(new Problem("tasks", "A task belongs to another site. One visit is at one site."));
            }
        }
    }

    private boolean needsTwo(PlanVisit plan) {
        UUID[] kinds = plan.tasks().stream().map(t -> t.kind().value()).toArray(UUID[]::new);
        return jdbc.sql("""
                        select exists (select 1 from site_hazards where site_id = :site and kind in ('CONFINED_SPACE', 'HEAVY_LIFT'))
                          or exists (select 1 from task_kinds k where k.id = any(:kinds) and (k.crew > 1 or exists
                            (select 1 from task_kind_skills s where s.task_kind_id = k.id and s.skill in ('CONFINED_SPACE', 'LIFTING'))))""")
                .param("site", plan.site().value())
                .param("kinds", kinds)
                .query(Boolean.class)
                .single();
    }

    private boolean knows(String sql, UUID id) {
        return jdbc.sql(sql).param("id", id).query(Integer.class).optional().isPresent();
    }
}
