package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.Interval;
import app.ramkeeper.catalogue.Life;
import app.ramkeeper.catalogue.Schedule;
import app.ramkeeper.catalogue.TaskTerms;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** By what rule a task falls due, and who said what about it: what its own page tells beyond a line of the due list. */
@Repository
class TaskRule {

    private final JdbcClient jdbc;
    private final Catalogue catalogue;

    TaskRule(JdbcClient jdbc, Catalogue catalogue) {
        this.jdbc = jdbc;
        this.catalogue = catalogue;
    }

    /**
     * What somebody said of the task.
     *
     * @param stated the last day that was stated without a report
     * @param lastReport the report that tells the last day, if one does
     * @param waitingReport the report that says whose delay it is, if one does
     */
    public record Said(
            int version,
            @Nullable LocalDate commissioned,
            @Nullable LocalDate decidedOn,
            @Nullable String decidedBy,
            @Nullable LocalDate stated,
            @Nullable UUID lastReport,
            @Nullable UUID waitingReport,
            @Nullable String waitingBy,
            @Nullable Interval agreed,
            @Nullable UUID model,
            @Nullable String modelName,
            @Nullable String waterClass,
            @Nullable String waterName) {}

    /**
     * The rule in its parts.
     *
     * @param interval how often here, all told
     * @param base how often before the factor for the water; null if there is none
     * @param factor on the interval for the water; null if there is none
     * @param source who sets the interval: AGREED for this install, MODEL of the pump, or KIND of task
     */
    public record Rule(
            Schedule schedule,
            String interval,
            @Nullable String base,
            @Nullable String factor,
            String source,
            @Nullable MonthDay season,
            boolean running,
            int earlyDays,
            int lateDays) {}

    Said said(UUID task) {
        return jdbc.sql("""
                        select t.version, i.commissioned_on as commissioned, t.decided_on, d.name as decided_by, t.stated_on,
                          t.last_report_id, t.waiting_report_id, w.name as waiting_by, t.interval_months, t.interval_days,
                          m.id as model_id, m.name as model_name, s.water_class, c.name as water_name
                        from service_tasks t join installs i on i.id = t.install_id join sites s on s.id = i.site_id
                          left join pumps p on p.id = t.pump_id left join pump_models m on m.id = p.model_id
                          left join water_classes c on c.code = s.water_class
                          left join people d on d.id = t.decided_by left join people w on w.id = t.waiting_by
                        where t.id = ?""")
                .param(task)
                .query((row, n) -> new Said(
                        row.getInt("version"),
                        row.getObject("commissioned", LocalDate.class),
                        row.getObject("decided_on", LocalDate.class),
                        row.getString("decided_by"),
                        row.getObject("stated_on", LocalDate.class),
                        row.getObject("last_report_id", UUID.class),
                        row.getObject("waiting_report_id", UUID.class),
                        row.getString("waiting_by"),
                        row.getObject("interval_months", Integer.class) == null
                                ? null
                                : new Interval(row.getInt("interval_months"), row.getInt("interval_days")),
                        row.getObject("model_id", UUID.class),
                        row.getString("model_name"),
                        row.getString("water_class"),
                        row.getString("water_name")))
                .single();
    }

    Rule of(UUID kind, Said said) {
        TaskTerms terms = Objects.requireNonNull(catalogue.terms().get(kind));
        Interval agreed = said.agreed();
        Interval here = agreed == null ? terms.intervalFor(said.model(), said.waterClass()) : agreed;
        Interval base = terms.intervalFor(said.model(), null);
        BigDecimal factor = agreed != null || said.waterClass() == null || here.equals(base)
                ? null
                : terms.byWater().get(said.waterClass());
        boolean ofModel = said.model() != null && terms.byModel().containsKey(said.model());
        return new Rule(
                terms.schedule(),
                here.words(),
                factor == null ? null : base.words(),
                factor == null ? null : factor.stripTrailingZeros().toPlainString(),
                agreed != null ? "AGREED" : ofModel ? "MODEL" : "KIND",
                terms.season(),
                terms.life() == Life.RUNNING,
                terms.earlyDays(),
                terms.lateDays());
    }
}
