package app.ramkeeper.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.audit.Actor;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.upkeep.WeatherEvents;
import app.ramkeeper.visits.PageTest;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.PlatformTransactionManager;

/** What a newcomer to the trial run finds; one load, taken back afterwards. */
@PageTest
class DemoScenarioTests {

    /** Sites and installs that the demo made, whatever else is in the tests' database. */
    private static final String ITS =
            " from installs i join sites s on s.id = i.site_id and s.reference ~ '^S[0-9]{3}$'"
                    + " join depots d on d.id = s.depot_id and d.name in ('Longspur', 'Kettle Bridge') ";

    private static final String LATE = ITS + """
            join service_tasks t on t.install_id = i.id and t.ended_on is null and t.done_by = 'US' and t.asleep_since is null
            join task_kinds k on k.id = t.task_kind_id and k.watched where t.window_until < current_date - 1""";

    @Autowired
    JdbcTemplate plain;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    PlatformTransactionManager transactions;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    WeatherEvents weather;

    @Autowired
    Clock clock;

    @Autowired
    MockMvcTester mvc;

    @Test
    void tellsTheStoriesThatItPromises() {
        DemoScenario demo = new DemoScenario(plain, transactions, events, weather, clock);
        Actor.as(new Actor("system", "demo"), () -> {
            demo.load();
            return true;
        });

        nineYearsOfACompany();
        rubbersLateForEachReason();
        aFloodedValley();
        componentsWhereTheySit();
        whatWaitsToday();
        pagesThatShowIt();
    }

    private void nineYearsOfACompany() {
        assertThat(count("select count(distinct s.id)" + ITS)).isEqualTo(180);
        assertThat(count("select count(*)" + ITS)).isEqualTo(240);
        assertThat(count("select count(*) from stock_places where kind = 'VAN' and name like '%''s van'"))
                .isEqualTo(4);
        assertThat(count("select count(*)" + ITS + "join visit_reports r on r.site_id = s.id"))
                .isGreaterThan(3000);
        assertThat(jdbc.sql("select min(r.attended_on)" + ITS + "join visit_reports r on r.site_id = s.id")
                        .query(LocalDate.class)
                        .single())
                .isBefore(LocalDate.now(clock).minusYears(8));
        assertThat(count("select count(*)" + ITS + "where not i.commissioning_known"))
                .isPositive();
        assertThat(count("select count(*)" + ITS + "where s.latitude is null")).isPositive();
        assertThat(
                        count(
                                "select count(distinct a.id)" + ITS
                                        + "join agreement_installs ai on ai.install_id = i.id join agreements a on a.id = ai.agreement_id where a.price > 0"))
                .isEqualTo(60);
        assertThat(count("select count(*)" + ITS
                        + "join consents c on c.site_id = s.id where c.expires_on < current_date + 90"))
                .isPositive();
    }

    private void rubbersLateForEachReason() {
        for (String whose : new String[] {"OURS", "CANNOT_REACH", "REFUSED", "PARTS"}) {
            assertThat(count("select count(*)" + LATE + " and t.waiting = '" + whose + "'"))
                    .as(whose)
                    .isPositive();
        }
        assertThat(
                        count(
                                "select count(*) from (select i.id" + LATE
                                        + " group by i.id having count(distinct t.waiting) > 1 and count(distinct t.pump_id) = 1) torn"))
                .as("one visit in vain stands for both rubbers")
                .isZero();
    }

    private void aFloodedValley() {
        assertThat(count("select count(*) from weather_events e join catchments c on c.id = e.catchment_id"
                        + " where e.name = 'High water in ' || c.name and e.installs > 10"))
                .isEqualTo(1);
        assertThat(count("select count(*)" + ITS + """
                        join service_tasks t on t.install_id = i.id join task_kinds k on k.id = t.task_kind_id and k.code = 'AFTER_FLOOD'
                        where t.due_on between current_date and current_date + 10""")).isGreaterThan(10);
    }

    private void componentsWhereTheySit() {
        assertThat(count("select count(distinct c.position)" + ITS + "join components c on c.install_id = i.id"))
                .isEqualTo(5);
        assertThat(
                        count(
                                "select count(*)" + ITS
                                        + "join components c on c.install_id = i.id and c.removed_on is not null"
                                        + " join components n on n.install_id = i.id and n.position = c.position and n.fitted_on = c.removed_on"))
                .as("a rubber that was changed, with the one that took its place")
                .isPositive();
        assertThat(count("select count(*)" + ITS
                        + "join configurations c on c.install_id = i.id where c.valve_setting = '1 turns open'"))
                .isZero();
    }

    private void whatWaitsToday() {
        assertThat(
                        count(
                                "select count(*)" + ITS
                                        + "join calls c on c.install_id = i.id where c.closed_at is null and c.promised_by is not null"))
                .isEqualTo(3);
        assertThat(count("select count(distinct p.person_id)" + ITS + """
                        join visits v on v.site_id = s.id and v.state = 'PLANNED' join visit_people p on p.visit_id = v.id
                        join visit_tasks t on t.visit_id = v.id""")).isEqualTo(4);
        assertThat(
                        count(
                                "select count(distinct v.id)" + ITS
                                        + "join visits v on v.site_id = s.id join visit_attempts a on a.visit_id = v.id group by v.id having count(*) >= 3"))
                .as("a gate that was locked three times")
                .isEqualTo(1);
        assertThat(
                        count(
                                "select count(distinct r.state)" + ITS
                                        + "join running_states r on r.install_id = i.id and r.until_date is null and r.state in ('NO_WATER', 'DORMANT')"))
                .isEqualTo(2);
        assertThat(count("select count(distinct f.place)" + ITS
                        + "join pump_fittings f on f.install_id = i.id and f.until_date is null"))
                .as("one at work, one on loan")
                .isEqualTo(2);
        assertThat(count("select count(*)" + ITS
                        + "join pump_fittings f on f.install_id = i.id and f.until_date is null and f.place_no = 2"))
                .as("a battery of two")
                .isEqualTo(1);
        assertThat(count("select count(*)" + ITS
                        + "join follow_ups f on f.site_id = s.id and f.promised and f.done_on is null"))
                .isGreaterThanOrEqualTo(4);
    }

    private void pagesThatShowIt() {
        PersonId marama =
                new PersonId(jdbc.sql("select id from people where name = 'Marama Teal' order by id desc limit 1")
                        .query(UUID.class)
                        .single());
        assertThat(page("/overdue", marama, Role.MANAGER)).contains("cannot reach", "refused", "parts");
        assertThat(page("/calls", marama, Role.OFFICE)).contains("stock dry", "Somebody rings");
        assertThat(page("/", marama, Role.OFFICE)).contains("Somebody");
    }

    private String page(String path, PersonId person, Role role) {
        var answer =
                mvc.get().uri(path).with(user(PageTest.As.who(person, role))).exchange();
        assertThat(answer).hasStatusOk();
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private long count(String sql) {
        return jdbc.sql(sql).query(Long.class).single();
    }
}
