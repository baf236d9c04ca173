package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.rounds.week.Preparation;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What publishing brings to the visits: exactly what the week says, and never another word than the customer's. */
@PageTest
class PublishedVisitsTests {

    private static final AtomicInteger WEEK = new AtomicInteger();

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    Preparation preparation;

    @Autowired
    WeekEdits edits;

    @Autowired
    Visits visits;

    @Autowired
    WeekStore weeks;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private PersonId ana;
    private SiteId site;
    private LocalDate monday;

    @BeforeEach
    void register() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(93 + WEEK.incrementAndGet());
        ana = people.named("Ana Weir");
        people.startTogether(ana);
        site = sites.named("Beck field " + Uuids.next().toString().substring(30));
        due(site, monday.minusDays(30), "CLEAN_STRAINER", "CHANGE_WASTE_RUBBER", "CHANGE_DELIVERY_RUBBER");
    }

    /** These kinds of task of the site are due on a day, all others years later. */
    private void due(SiteId at, LocalDate day, String... codes) {
        InstallId install = installs.commissioned(at, monday.minusYears(3));
        jdbc.sql("""
                        update service_tasks t set due_on = d.due, window_from = d.due - 30, window_until = d.due + 20, asleep_since = null, wakes_on = null
                        from (select k.id, case when k.code = any(:codes) then :due::date else :due::date + 900 end as due from task_kinds k) d
                        where install_id = :install and task_kind_id = d.id""")
                .param("codes", codes)
                .param("due", day)
                .param("install", install.value())
                .update();
    }

    private record Told(int minutes, String answer, List<UUID> tasks) {}

    private Told told() {
        UUID visit = stop().visitId();
        List<UUID> tasks = jdbc.sql("select task_id from visit_tasks where visit_id = ?")
                .param(visit)
                .query(UUID.class)
                .list();
        return jdbc.sql("select minutes, answer from visits where id = ?")
                .param(visit)
                .query((row, n) -> new Told(row.getInt(1), row.getString(2), tasks))
                .single();
    }

    private List<UUID> tasksOfStop() {
        return jdbc.sql("select task_id from week_stop_tasks where stop_id = ?")
                .param(stop().id())
                .query(UUID.class)
                .list();
    }

    @Test
    void aVisitThatStoodBeforeTheWeekGetsItsTasksAndMinutes() {
        for (boolean typed : new boolean[] {false, true}) {
            register();
            visit(typed, "NONE");
            prepare();
            Stop planned = stop();
            assertThat(planned.tasks()).contains("Clean strainer", "rubber");
            assertThat(planned.minutes()).isGreaterThan(60);

            publish();

            assertThat(told().tasks()).hasSize(3).containsExactlyInAnyOrderElementsOf(tasksOfStop());
            assertThat(told().minutes()).isEqualTo(planned.minutes());
            assertThat(stop().outgrown()).isFalse();
            assertThat(get("/visits/" + stop().visitId())).bodyText().contains("Clean strainer");
            prepare();
            assertThat(stop().minutes())
                    .as("looked for anew, nothing is counted twice")
                    .isEqualTo(planned.minutes());
        }
    }

    @Test
    void whatComesDueAfterPublishingIsToldByPublishingAgain() {
        visit(false, "NONE");
        prepare();
        publish();
        int before = told().minutes();
        jdbc.sql("""
                        update service_tasks set due_on = :due, window_from = :due, window_until = :due
                        where task_kind_id = (select id from task_kinds where code = 'CHECK_PRECHARGE')
                          and install_id in (select id from installs where site_id = :site)""").param("due", monday).param("site", site.value()).update();
        prepare();
        assertThat(stop().outgrown()).isTrue();
        publish();
        assertThat(told().tasks()).hasSize(4).containsExactlyInAnyOrderElementsOf(tasksOfStop());
        assertThat(told().minutes()).isEqualTo(stop().minutes()).isGreaterThan(before);
    }

    @Test
    void minutesTypedAtTheVisitMeanwhileCountInTheWeekAtOnce() {
        visit(true, "NONE");
        prepare();
        publish();
        jdbc.sql("update visits set minutes = 95, version = version + 1 where id = ?")
                .param(stop().visitId())
                .update();
        assertThat(stop().minutes()).isEqualTo(95);
        assertThat(stop().outgrown()).isFalse();
        publish();
        assertThat(told().minutes()).isEqualTo(95);
    }

    @Test
    void tasksTakenOffAtTheVisitAreNotPutBackByPublishing() {
        visit(false, "NONE");
        prepare();
        publish();
        PlanVisit.Task kept = weeks.tasks(stop()).get(0);
        VisitId visit = new VisitId(Objects.requireNonNull(stop().visitId()));
        int version = jdbc.sql("select version from visits where id = ?")
                .param(visit.value())
                .query(Integer.class)
                .single();
        signIn();
        assertThat(visits.changeWithTasks(
                        visit,
                        version,
                        new PlanVisit(
                                site,
                                VisitKind.SERVICE,
                                monday.plusDays(1),
                                stop().publishedFrom(),
                                told().minutes(),
                                List.of(ana),
                                List.of(kept),
                                null)))
                .isTrue();
        assertThat(tasksOfStop()).containsExactly(kept.task());
        assertThat(stop().outgrown()).isFalse();
        publish();
        assertThat(told().tasks()).containsExactly(kept.task());
    }

    @Test
    void aTaskThatTheVisitAsksForLongBeforeItsTimeStays() {
        visit(false, "NONE");
        UUID far = jdbc.sql("""
                        insert into visit_tasks (visit_id, task_id, install_id, task_kind_id)
                        select v.id, t.id, t.install_id, t.task_kind_id from visits v join installs i on i.site_id = v.site_id
                          join service_tasks t on t.install_id = i.id join task_kinds k on k.id = t.task_kind_id
                        where v.site_id = ? and k.code = 'CHECK_PRECHARGE' returning task_id""").param(site.value()).query(UUID.class).single();
        prepare();
        publish();
        assertThat(told().tasks()).hasSize(4).contains(far).containsExactlyInAnyOrderElementsOf(tasksOfStop());
        assertThat(stop().outgrown()).isFalse();
    }

    @Test
    void publishingNeverRewritesWhatTheCustomerAgreedTo() {
        visit(false, "CONFIRMED");
        prepare();
        assertThat(stop().fixedFrom()).isEqualTo(LocalTime.of(9, 0));
        UUID other = edits.add(by(), sites.named("Long morning"), 240, "look");
        edits.move(by(), other, ana.value(), monday.plusDays(1), stop().id(), null);
        edits.excuse(by(), stop().id(), "the only technician");
        String agreed = "agreed to " + Times.day(monday.plusDays(1)) + ", 09:00";
        assertThat(get("/rounds/" + monday))
                .bodyText()
                .contains("1 visit stands otherwise than its customer agreed to", agreed);

        publish();

        Stop now = stop();
        assertThat(now.publishedFrom()).isAfter(LocalTime.of(11, 0));
        assertThat(told().answer()).isEqualTo("NONE");
        assertThat(now.hadAgreed()).isEqualTo(Times.day(monday.plusDays(1)) + ", 09:00");
        assertThat(now.fixedFrom()).as("nobody agreed to the new time").isNull();
        assertThat(get("/rounds/" + monday))
                .bodyText()
                .contains("They had " + agreed)
                .doesNotContain("stands otherwise than its customer");
        assertThat(get("/visits/" + now.visitId())).bodyText().contains("They had agreed to", "09:00");
        assertThat(get("/rounds/" + monday + "/customers"))
                .bodyText()
                .as("first of all, though another is earlier that day")
                .containsSubsequence(now.site(), "They had " + agreed, "Long morning");

        prepare();
        assertThat(stop().fixedFrom()).isNull();
        assertThat(stop().hadAgreed()).isNotNull();
        assertThat(post("/rounds/" + monday + "/customers/" + now.visitId(), "answer", "CONFIRMED"))
                .hasStatus3xxRedirection();
        assertThat(stop().hadAgreed()).isNull();
        assertThat(stop().fixedFrom()).isEqualTo(now.publishedFrom());
    }

    @Test
    void aVisitMovedBackToWhatWasAgreedIsAgreedAgain() {
        visit(false, "CONFIRMED");
        prepare();
        edits.move(by(), stop().id(), ana.value(), monday.plusDays(2), null, "she cannot on Tuesday");
        assertThat(get("/rounds/" + monday)).bodyText().contains("stands otherwise than its customer agreed to");
        assertThat(get("/rounds/" + monday + "/compare"))
                .bodyText()
                .as("with the time, before as after")
                .containsSubsequence(
                        "Ana Weir, " + Times.day(monday.plusDays(1)),
                        ", 09:00",
                        "Ana Weir, " + Times.day(monday.plusDays(2)));
        publish();
        assertThat(told().answer()).isEqualTo("NONE");
        assertThat(stop().fixedOn()).isNull();

        edits.move(by(), stop().id(), ana.value(), monday.plusDays(1), null, null);
        jdbc.sql("update week_stops set fixed_on = ?, fixed_from = '09:10' where id = ?")
                .params(monday.plusDays(1), stop().id())
                .update();
        publish();
        assertThat(told().answer()).as("ten minutes are punctual").isEqualTo("CONFIRMED");
        prepare();
        assertThat(stop().fixedFrom())
                .as("what they agreed to, not what was planned")
                .isEqualTo(LocalTime.of(9, 0));
    }

    /** A request leaves nobody signed in behind. */
    private static void signIn() {
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("ada", null, "ROLE_OFFICE", "ROLE_TECHNICIAN"));
    }

    private void prepare() {
        signIn();
        preparation.prepare(monday, null);
    }

    private By by() {
        signIn();
        return new By(monday, version(), ana.value());
    }

    private void publish() {
        MvcTestResult done = post("/rounds/" + monday + "/publish", "version", "" + version());
        assertThat(done).as(() -> text(done)).hasStatus3xxRedirection();
    }

    private static String text(MvcTestResult page) {
        try {
            return page.getResponse().getContentAsString();
        } catch (java.io.UnsupportedEncodingException never) {
            throw new IllegalStateException(never);
        }
    }

    /** A visit of an hour on Tuesday at nine that stood before the week was made, without tasks. */
    private void visit(boolean typed, String answer) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into visits (id, site_id, kind, planned_on, planned_from, minutes, minutes_by_hand, answer)
                        values (?, ?, 'SERVICE', ?, '09:00', 60, ?, ?)""")
                .params(id, site.value(), monday.plusDays(1), typed, answer)
                .update();
        jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (?, ?, true)")
                .params(id, ana.value())
                .update();
    }

    private Stop stop() {
        return weeks.load(monday).stops().stream()
                .filter(s -> s.siteId().equals(site.value()))
                .findFirst()
                .orElseThrow();
    }

    private int version() {
        return weeks.plan(monday).orElseThrow().version();
    }

    private MvcTestResult get(String path) {
        return mvc.get().uri(path).with(user(PageTest.As.who(ana, Role.OFFICE))).exchange();
    }

    private MvcTestResult post(String path, String... values) {
        var request = mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(ana, Role.OFFICE)))
                .with(csrf());
        for (int i = 0; i < values.length; i += 2) {
            request.param(values[i], values[i + 1]);
        }
        return request.exchange();
    }
}
