package app.ramkeeper.demo;

import app.ramkeeper.audit.Actor;
import app.ramkeeper.demo.DemoRegister.Placed;
import app.ramkeeper.fleet.CatchmentId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.InstallsRegistered;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.upkeep.WeatherEvents;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.annotation.Profile;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Loads the invented contractor once, all of it or nothing: nine years from a seeded simulation whose truth stands in
 * {@code db/demo}. Dates count back from today.
 */
@Component
@Profile("trial")
@Order(10)
class DemoScenario implements ApplicationRunner {

    private static final Logger LOG = LoggerFactory.getLogger(DemoScenario.class);
    private static final int FLOODED = 3;

    private final JdbcTemplate jdbc;
    private final TransactionTemplate transaction;
    private final ApplicationEventPublisher events;
    private final WeatherEvents weather;
    private final Clock clock;

    DemoScenario(
            JdbcTemplate jdbc,
            PlatformTransactionManager transactions,
            ApplicationEventPublisher events,
            WeatherEvents weather,
            Clock clock) {
        this.jdbc = jdbc;
        this.transaction = new TransactionTemplate(transactions);
        this.events = events;
        this.weather = weather;
        this.clock = clock;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (!jdbc.queryForList("select 1 from depots limit 1").isEmpty()) {
            return;
        }
        long start = System.nanoTime();
        Actor.as(
                new Actor("system", "demo"),
                () -> transaction.execute(status -> {
                    load();
                    return true;
                }));
        LOG.info("Loaded the demo scenario in {} ms", (System.nanoTime() - start) / 1_000_000);
    }

    void load() {
        LocalDate today = LocalDate.now(clock);
        Wear wear = new Wear();
        Random random = new Random(wear.count("seed"));
        DemoRows rows = new DemoRows();
        DemoCompany company = new DemoCompany(jdbc, rows, today);
        DemoPrices.write(rows, company, today, jdbc);
        DemoEnquiries.write(jdbc, today);
        DemoRegister register = new DemoRegister(rows, company, wear, random, today);
        rows.write(jdbc);
        DemoHistory history = new DemoHistory(rows, company, wear, random, today, clock.getZone());
        List<Placed> installs = register.installs;
        for (int i = 0; i < installs.size(); i++) {
            history.live(installs.get(i), i);
        }
        rows.write(jdbc);
        new DemoComponents(rows, today).add(register);
        new DemoToday(rows, company, register, today, clock.getZone(), clock.instant()).add(jdbc, history);
        events.publishEvent(new InstallsRegistered(
                installs.stream().map(at -> new InstallId(at.install())).toList()));
        flood(company, register, today);
        askForWhatIsDue();
    }

    /** A valley was flooded last week; the office has recorded it. */
    private void flood(DemoCompany company, DemoRegister register, LocalDate today) {
        SecurityContextHolder.getContext()
                .setAuthentication(UsernamePasswordAuthenticationToken.authenticated(
                        "demo", null, AuthorityUtils.createAuthorityList("ROLE_OFFICE")));
        try {
            weather.record(
                    "High water in " + Names.VALLEYS.get(FLOODED),
                    today.minusDays(6),
                    today.plusDays(8),
                    Objects.requireNonNull(company.taskKinds.get("AFTER_FLOOD")),
                    new WeatherEvents.Area(new CatchmentId(register.catchments.get(FLOODED)), null, null),
                    new PersonId(company.office));
        } finally {
            SecurityContextHolder.clearContext();
        }
    }

    /** Each planned visit that asks for nothing yet is asked to do what is due there by then, one person may do and its time allows. */
    private void askForWhatIsDue() {
        jdbc.update("""
                insert into visit_tasks (visit_id, task_id, install_id, task_kind_id)
                select visit_id, task_id, install_id, task_kind_id from (
                  select v.id as visit_id, t.id as task_id, t.install_id, t.task_kind_id, v.minutes - 2 * coalesce(s.walk_minutes, 0) as room,
                    sum(k.minutes) over most_pressing as needs, row_number() over most_pressing as place
                  from visits v join sites s on s.id = v.site_id join installs i on i.site_id = v.site_id
                    join service_tasks t on t.install_id = i.id join task_kinds k on k.id = t.task_kind_id
                  where v.state = 'PLANNED' and t.ended_on is null and t.done_by = 'US' and t.asleep_since is null
                    and t.window_from <= v.planned_on and not exists (select from visit_tasks asked where asked.visit_id = v.id)
                    and k.crew = 1 and not exists (select from task_kind_skills s where s.task_kind_id = k.id)
                  window most_pressing as (partition by v.id order by t.window_until, t.id)) due
                where place = 1 or needs <= room""");
    }
}
