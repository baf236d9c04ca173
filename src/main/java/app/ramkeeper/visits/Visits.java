package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.ReportRefused.Problem;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The plan of visits, and what reports in force say of tasks. What pages show of the past is {@link VisitHistory}. */
@Service
@Transactional
public class Visits {

    private static final Logger LOG = LoggerFactory.getLogger(Visits.class);

    private final VisitRepository visits;
    private final PlanRules rules;
    private final LockedGates gates;
    private final WorkQueries works;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Visits(
            VisitRepository visits,
            PlanRules rules,
            LockedGates gates,
            WorkQueries works,
            JdbcClient jdbc,
            ApplicationEventPublisher events,
            Clock clock) {
        this.visits = visits;
        this.rules = rules;
        this.gates = gates;
        this.works = works;
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Puts a visit on the plan.
     *
     * @throws ReportRefused if the plan breaks a rule, such as one person alone for a heavy lift
     * @throws Conflict if somebody is taken at that time
     */
    @ForOffice
    public VisitId plan(PlanVisit plan) {
        refuse(rules.broken(plan, LocalDate.now(clock)));
        VisitId id = VisitId.next();
        save(new Visit(id, plan, gates.mustRing(plan.site()), clock.instant()));
        LOG.info("Visit {} planned at site {} on {}", id, plan.site(), plan.on());
        return id;
    }

    /**
     * Changes day, time, people, kind and note of a planned visit.
     *
     * @return false if somebody else changed it since the version given; nothing is changed then
     */
    @ForOffice
    public boolean change(VisitId id, int version, PlanVisit plan) {
        return change(id, version, plan, false);
    }

    /** The same, and the visit is asked to answer the tasks of the plan and no others. */
    @ForOffice
    public boolean changeWithTasks(VisitId id, int version, PlanVisit plan) {
        return change(id, version, plan, true);
    }

    private boolean change(VisitId id, int version, PlanVisit plan, boolean tasksToo) {
        Visit visit = visits.hold(id.value()).orElseThrow(() -> new Missing("visit", id));
        if (visit.version() != version) {
            return false;
        }
        refuse(rules.broken(plan, LocalDate.now(clock)));
        visit.change(plan, clock.instant());
        if (tasksToo) {
            visit.ask(plan.tasks());
        }
        save(visit);
        if (tasksToo) {
            events.publishEvent(new VisitRetasked(id));
        }
        return true;
    }

    /** Takes a visit off the plan. Its tasks stay due. */
    @ForOffice
    public void cancel(VisitId id, String reason) {
        Visit visit = visits.hold(id.value()).orElseThrow(() -> new Missing("visit", id));
        visit.cancel(reason);
        visits.saveAndFlush(visit);
    }

    /** Takes a visit off the plan because what it was for is done; one that is over stays as it is. */
    @ForAll
    public void overtaken(VisitId id, String reason) {
        visits.hold(id.value())
                .filter(visit -> visit.state() == VisitState.PLANNED)
                .ifPresent(visit -> {
                    visit.cancel(reason);
                    visits.saveAndFlush(visit);
                });
    }

    /** Puts down a try to reach the customer, and what they said. */
    @ForOffice
    public void answered(VisitId id, ContactBy how, Answer answer, @Nullable String note, PersonId by) {
        if (answer == Answer.NONE) {
            throw new IllegalArgumentException("A try to reach somebody has an outcome");
        }
        Visit visit = visits.hold(id.value()).orElseThrow(() -> new Missing("visit", id));
        visit.answered(answer);
        visits.saveAndFlush(visit);
        jdbc.sql("""
                        insert into visit_attempts (id, visit_id, at, by_person, how, outcome, note, for_day)
                        values (:id, :visit, :at, :by, :how, :outcome, :note, :day)""")
                .param("id", Uuids.next())
                .param("visit", id.value())
                .param("at", ReportStore.at(clock.instant()))
                .param("by", by.value())
                .param("how", how.name())
                .param("outcome", answer.name())
                .param("note", note)
                .param("day", visit.plannedOn())
                .update();
        events.publishEvent(new VisitAnswered(id, answer, failedInARow(id), by));
    }

    private int failedInARow(VisitId id) {
        return jdbc.sql("""
                        select count(*)::int from visit_attempts a where a.visit_id = :visit and a.outcome = 'NO_ANSWER'
                          and not exists (select from visit_attempts l where l.visit_id = :visit and l.outcome <> 'NO_ANSWER' and l.at > a.at)""").param("visit", id.value()).query(Integer.class).single();
    }

    /** What all reports in force say of an install's tasks, oldest day first; of one day, as they were recorded. */
    @Transactional(readOnly = true)
    @ForField
    public List<WorkDone> worksOf(InstallId install) {
        return works.worksOf(install);
    }

    /** The catalogue parts that all reports in force say were fitted at an install, oldest day first. */
    @Transactional(readOnly = true)
    @ForField
    public List<PartFitted> partsFitted(InstallId install) {
        return works.partsFitted(install);
    }

    private void save(Visit visit) {
        try {
            visits.saveAndFlush(visit);
        } catch (DataIntegrityViolationException broken) {
            if (String.valueOf(broken.getMessage()).contains("ex_visit_people_slot")) {
                throw new Conflict(
                        "Somebody of this visit is on another visit at that time." + " Choose another time or person.");
            }
            throw broken;
        }
    }

    private static void refuse(List<Problem> problems) {
        if (!problems.isEmpty()) {
            throw new ReportRefused(problems);
        }
    }
}
