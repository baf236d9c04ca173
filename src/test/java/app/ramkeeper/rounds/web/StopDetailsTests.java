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
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.io.IOException;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;

/** What a stop takes along: whom to ring, parts of a pump of unknown model, and minutes that its tasks fit in. */
@PageTest
class StopDetailsTests {

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
    WeekStore weeks;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private static final String LATER = "Later than promised.";

    private PersonId ana;
    private SiteId site;
    private LocalDate monday;

    @BeforeEach
    void register() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(75);
        ana = people.named("Ana Weir");
        people.startTogether(ana);
        site = sites.ownedBy("Owner of all", "Ring first");
        InstallId install = installs.commissioned(site, monday.minusYears(3));
        jdbc.sql("""
                        update service_tasks set due_on = :due, window_from = :due::date - 30, window_until = :due::date + 20,
                          asleep_since = null, wakes_on = null
                        where install_id = :install""")
                .param("due", monday.minusDays(30))
                .param("install", install.value())
                .update();
        jdbc.sql("update customers set phone = '021 700', private_notes = 'pays late' where name = 'Owner of all'")
                .update();
    }

    @Test
    void theSheetSaysWhomToRing() throws IOException {
        place();
        assertThat(get(sheet()))
                .hasStatusOk()
                .bodyText()
                .contains("Owner of all (owner), 021 700")
                .doesNotContain("pays late");

        party("KEY_HOLDER", "Kay Holder", "021 800");
        assertThat(get(sheet()))
                .bodyText()
                .contains("Kay Holder (key holder), 021 800")
                .doesNotContain("Owner of all");

        party("OCCUPIER", "Jo Without", null);
        assertThat(get(sheet())).bodyText().contains("Jo Without (occupier), no number known", "Kay Holder");
        party("OCCUPIER", "Jo House", "021 900");
        assertThat(get(sheet()))
                .bodyText()
                .containsSubsequence("To ring", "Jo House (occupier), 021 900", "Keys, others there", "Kay Holder");
        assertThat(paper()).contains("Jo House (occupier), 021 900").doesNotContain("pays late");

        jdbc.sql("update site_parties set from_date = :from, until_date = :until where site_id = :site")
                .param("from", monday.minusYears(2))
                .param("until", monday.minusYears(1))
                .param("site", site.value())
                .update();
        assertThat(get(sheet())).bodyText().contains("nobody is known at this site");
    }

    @Test
    void theSheetSaysWhatAPumpOfUnknownModelAsksFor() throws IOException {
        jdbc.sql("""
                        insert into task_kind_parts (task_kind_id, part_kind, position, quantity)
                        select id, 'STRAINER', '', 2 from task_kinds where code = 'CLEAN_STRAINER' on conflict do nothing""").update();
        place();
        assertThat(get(sheet()))
                .bodyText()
                .contains(
                        "Top ram: model unknown, look at the plate",
                        "asks for 2 \u00d7 strainer; take the sizes that may fit",
                        "The list does not hold");
        assertThat(paper()).contains("model unknown, look at the plate");

        UUID model = Uuids.next();
        jdbc.sql("insert into pump_models (id, name) values (?, 'Known One')")
                .param(model)
                .update();
        jdbc.sql("""
                        update pumps set model_id = :model where id in (select pump_id from pump_fittings f join installs i on i.id = f.install_id
                          where i.site_id = :site)""").param("model", model).param("site", site.value()).update();
        assertThat(get(sheet()))
                .bodyText()
                .contains("for model Known One no such part is put down")
                .doesNotContain("model unknown");

        UUID part = Uuids.next();
        jdbc.sql("insert into parts (id, number, name, kind) values (?, 'STR-1', 'Basket', 'STRAINER')")
                .param(part)
                .update();
        jdbc.sql("insert into pump_model_parts (model_id, part_id, position, quantity) values (?, ?, 'STRAINER', 1)")
                .params(model, part)
                .update();
        assertThat(get(sheet())).bodyText().contains("Basket STR-1").doesNotContain("2 \u00d7 strainer");
    }

    @Test
    void weekStopAndSheetNameTheOpenCallAndThePromise() throws IOException {
        jdbc.sql("""
                        insert into calls (id, received_at, taken_by, site_id, symptom, stock_dry, water_hours_left, promised_by)
                        values (:id, :at::timestamptz, :ana, :site, 'LESS_WATER', true, 6, :at::timestamptz + interval '20 hours')""")
                .param("id", Uuids.next())
                .param("at", at(monday.minusDays(1), 8))
                .param("ana", ana.value())
                .param("site", site.value())
                .update();
        promise(monday.minusDays(1), "Bring the right seal set");
        place();

        String dry = "stock without water; water until " + Times.day(monday.minusDays(1)) + ", 14:00";
        String by = "promised by " + Times.day(monday) + ", 04:00";
        String promise = "promised by " + Times.day(monday.minusDays(1)) + ": Bring the right seal set";
        assertThat(get("/rounds/" + monday)).bodyText().contains("Somebody rang:", dry, by, promise, LATER);
        assertThat(get(page(stop()))).bodyText().contains("Somebody rang:", dry, by, promise, LATER, "The call");
        assertThat(get(sheet())).bodyText().contains("Somebody rang:", dry, by, "Bring the right seal set", LATER);
        assertThat(paper()).contains("Somebody rang:", dry, by, LATER);

        jdbc.sql("update calls set closed_at = received_at where site_id = ?")
                .param(site.value())
                .update();
        assertThat(get("/rounds/" + monday)).bodyText().doesNotContain("Somebody rang:");
    }

    @Test
    void eachDayBeyondAPromiseCosts() {
        promise(monday.plusDays(1), "Look again");
        place();
        Stop stop = stop();
        double tasks = stop.worthADay();
        assertThat(stop.promisedOn()).isEqualTo(monday.plusDays(1));
        assertThat(stop.waiting(monday, monday.plusDays(1))).isEqualTo(tasks);
        assertThat(stop.waiting(monday, monday.plusDays(2))).isGreaterThan(2 * tasks);
        assertThat(stop.afterPromise()).isFalse();
        assertThat(get("/rounds/" + monday))
                .bodyText()
                .contains("promised by " + Times.day(monday.plusDays(1)) + ": Look again")
                .doesNotContain(LATER);
    }

    private void promise(LocalDate day, String text) {
        UUID report = Uuids.next();
        jdbc.sql("""
                        insert into visit_reports (id, site_id, kind, attended_on, recorded_at, recorded_by, outcome, content_hash, source)
                        values (?, ?, 'SERVICE', current_date - 9, now(), ?, 'DONE', sha256('x'), 'FORM')""").params(report, site.value(), ana.value()).update();
        jdbc.sql("insert into follow_ups (id, report_id, site_id, text, due_on, promised) values (?, ?, ?, ?, ?, true)")
                .params(Uuids.next(), report, site.value(), text, day)
                .update();
    }

    private java.sql.Timestamp at(LocalDate day, int hour) {
        return java.sql.Timestamp.from(
                day.atTime(hour, 0).atZone(clock.getZone()).toInstant());
    }

    @Test
    void aVisitWithTypedMinutesSaysThatItsTasksNeedMore() {
        visit(true);
        preparation.prepare(monday, null);
        Stop stop = stop();
        int asked = tasksSum();
        assertThat(stop.minutes()).isEqualTo(60);
        assertThat(stop.minutesAsked()).isEqualTo(asked).isGreaterThan(60);
        String words = "1 h given, its tasks need ";
        assertThat(get("/rounds/" + monday)).bodyText().contains(words);
        assertThat(get(page(stop))).bodyText().contains(words, "Plan it with");

        assertThat(post(page(stop) + "/minutes").param("version", "" + version()))
                .hasStatus3xxRedirection();
        assertThat(stop().minutes()).isEqualTo(asked);
        assertThat(get(page(stop))).bodyText().doesNotContain(words);
        assertThat(post("/rounds/" + monday + "/prepare")).hasStatus3xxRedirection();
        assertThat(stop().minutes()).as("brought up to date, it stays").isEqualTo(asked);

        assertThat(post("/rounds/" + monday + "/publish").param("version", "" + version()))
                .hasStatus3xxRedirection();
        assertThat(visitMinutes())
                .as("the visit is told as long as it is planned")
                .isEqualTo(asked);
    }

    @Test
    void takingTheTasksMinutesOverIsUndone() {
        visit(true);
        preparation.prepare(monday, null);
        assertThat(post(page(stop()) + "/minutes").param("version", "" + version()))
                .hasStatus3xxRedirection();
        assertThat(post("/rounds/" + monday + "/undo").param("version", "" + version()))
                .hasStatus3xxRedirection();
        assertThat(stop().minutes()).isEqualTo(60);
    }

    @Test
    void aVisitWithoutTypedMinutesIsPlannedAsLongAsItsTasksNeed() {
        visit(false);
        preparation.prepare(monday, null);
        assertThat(stop().minutes()).isEqualTo(tasksSum());
        assertThat(get("/rounds/" + monday)).bodyText().doesNotContain("its tasks need");
        assertThat(post(page(stop()) + "/minutes").param("version", "" + version()))
                .hasStatus(409);
    }

    @Test
    void aPublishedVisitWhoseTasksGrowIsToldItsNewLength() {
        visit(false);
        preparation.prepare(monday, null);
        publish();
        int before = visitMinutes();
        assertThat(before).isEqualTo(tasksSum());

        jdbc.sql("update task_kinds set minutes = minutes + 40 where code = 'CLEAN_STRAINER'")
                .update();
        assertThat(post("/rounds/" + monday + "/prepare")).hasStatus3xxRedirection();

        Stop grown = stop();
        assertThat(grown.minutes()).isEqualTo(before + 40);
        String words =
                "Published with " + Times.span(before) + ", its tasks have come to need " + Times.span(before + 40);
        assertThat(get("/rounds/" + monday)).bodyText().contains(words);
        assertThat(get(page(grown))).bodyText().contains(words, "Publish the changes");

        publish();

        assertThat(visitMinutes()).isEqualTo(before + 40);
        assertThat(stop().changedAt()).as("the technician sees that it changed").isNotNull();
        assertThat(stop().publishedFrom()).isEqualTo(grown.publishedFrom());
        assertThat(get("/rounds/" + monday)).bodyText().doesNotContain("have come to need");
    }

    @Test
    void aPublishedVisitWithTypedMinutesKeepsThemUntilTheLongerAreTakenOver() {
        visit(true);
        preparation.prepare(monday, null);
        publish();
        assertThat(visitMinutes()).isEqualTo(60);
        assertThat(get("/rounds/" + monday))
                .bodyText()
                .contains("1 h given, its tasks need ")
                .doesNotContain("have come to need");
        publish();
        assertThat(visitMinutes()).isEqualTo(60);

        assertThat(post(page(stop()) + "/minutes").param("version", "" + version()))
                .hasStatus3xxRedirection();
        assertThat(get("/rounds/" + monday)).bodyText().contains("Published with 1 h, its tasks have come to need ");
        publish();
        assertThat(visitMinutes()).isEqualTo(tasksSum());
    }

    @Test
    void ofAPastDayNothingIsSaidThatPublishingWouldTell() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.previous(DayOfWeek.MONDAY))
                .minusWeeks(1);
        visit(false);
        preparation.prepare(monday, null);
        jdbc.sql("update week_stops set published_on = day where id = ?")
                .param(stop().id())
                .update();
        jdbc.sql("update visits set minutes = 30 where site_id = ?")
                .param(site.value())
                .update();

        assertThat(stop().outgrown()).isTrue();
        assertThat(get("/rounds/" + monday)).bodyText().contains("Ring first").doesNotContain("have come to need");
    }

    private void publish() {
        assertThat(post("/rounds/" + monday + "/publish").param("version", "" + version()))
                .hasStatus3xxRedirection();
    }

    /** A planned visit of an hour that all tasks of the site belong to. */
    private void visit(boolean typed) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into visits (id, site_id, kind, planned_on, planned_from, minutes, minutes_by_hand, answer)
                        values (?, ?, 'SERVICE', ?, '09:00', 60, ?, 'CONFIRMED')""").params(id, site.value(), monday.plusDays(1), typed).update();
        jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (?, ?, true)")
                .params(id, ana.value())
                .update();
        jdbc.sql("""
                        insert into visit_tasks (visit_id, task_id, install_id, task_kind_id)
                        select ?, t.id, t.install_id, t.task_kind_id from service_tasks t join installs i on i.id = t.install_id
                          join task_kinds k on k.id = t.task_kind_id
                        where i.site_id = ? and t.ended_on is null and k.code in ('CLEAN_STRAINER', 'CHANGE_WASTE_RUBBER', 'CHANGE_DELIVERY_RUBBER')
                        """).params(id, site.value()).update();
        jdbc.sql("""
                        update service_tasks set due_on = due_on + 900, window_from = window_from + 900, window_until = window_until + 900
                        where install_id in (select id from installs where site_id = :site)
                          and id not in (select task_id from visit_tasks where visit_id = :visit)""").param("site", site.value()).param("visit", id).update();
    }

    private int tasksSum() {
        int sum = jdbc.sql("""
                        select sum(k.minutes)::int from week_stop_tasks t join task_kinds k on k.id = t.task_kind_id
                        where t.stop_id = ?""").param(stop().id()).query(Integer.class).single();
        return (sum + 4) / 5 * 5;
    }

    private int visitMinutes() {
        return jdbc.sql("select minutes from visits where site_id = ?")
                .param(site.value())
                .query(Integer.class)
                .single();
    }

    private void place() {
        preparation.prepare(monday, null);
        assertThat(post(page(stop()) + "/move")
                        .param("version", "" + version())
                        .param("to", ana.value() + "/" + monday))
                .hasStatus3xxRedirection();
    }

    private void party(String part, String name, String phone) {
        UUID contact = Uuids.next();
        jdbc.sql("insert into contacts (id, name, phone, notes) values (?, ?, ?, 'pays late')")
                .params(contact, name, phone)
                .update();
        jdbc.sql("insert into site_parties (id, site_id, part, contact_id) values (?, ?, ?, ?)")
                .params(Uuids.next(), site.value(), part, contact)
                .update();
    }

    /** The stop of the tasks that one person does; what needs two is a stop of its own. */
    private Stop stop() {
        return weeks.load(monday).stops().stream()
                .filter(s -> s.siteId().equals(site.value()) && s.crew() == 1)
                .findFirst()
                .orElseThrow();
    }

    private int version() {
        return weeks.plan(monday).orElseThrow().version();
    }

    private String page(Stop stop) {
        return "/rounds/" + monday + "/stops/" + stop.id();
    }

    private String sheet() {
        return "/rounds/" + monday + "/sheets/" + ana.value() + "/" + monday;
    }

    private String paper() throws IOException {
        byte[] bytes = get(sheet() + "/sheet.pdf").exchange().getResponse().getContentAsByteArray();
        try (var pdf = Loader.loadPDF(bytes)) {
            return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
        }
    }

    private MockMvcRequestBuilder get(String path) {
        return mvc.get().uri(path).with(user(PageTest.As.who(ana, Role.OFFICE)));
    }

    private MockMvcRequestBuilder post(String path) {
        return mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(ana, Role.OFFICE)))
                .with(csrf());
    }
}
