package app.ramkeeper.upkeep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Say;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Transactional;

@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
class UpkeepPagesTests {

    private static final String RUBBER = "01900000-0000-7000-8000-000000000002";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private String name;
    private InstallId install;
    private PersonId person;

    @BeforeEach
    void anInstallThatNobodyServed() {
        name = "Neglected " + Uuids.next();
        SiteId site = sites.named(name);
        install = installs.commissioned(site, LocalDate.now(clock).minusYears(40));
        person = people.named("Marama");
    }

    @Test
    void listsWhatIsDueMostOverdueFirst() {
        assertThat(get("/due?kind=" + RUBBER + "&state=OVERDUE")).contains(name, "days late", "interval-bar");
        assertThat(get("/due?kind=" + RUBBER + "&state=LATER")).doesNotContain(name);
    }

    @Test
    void findsByTheCustomerByPartOfTheNameOrId() {
        String owned = "Owned " + Uuids.next();
        SiteId site = sites.ownedBy("Höfer & 100% Söns", owned);
        installs.commissioned(site, LocalDate.now(clock).minusYears(40));
        String id = jdbc.sql("select customer_id from site_parties where site_id = ?")
                .param(site.value())
                .query(String.class)
                .single();

        assertThat(get("/due?kind=" + RUBBER + "&customer=hofer%20%26%20100%25"))
                .contains(owned)
                .doesNotContain(name);
        assertThat(get("/due?kind=" + RUBBER + "&customer=hofer%20%26%201%25s")).doesNotContain(owned);
        assertThat(get("/due?kind=" + RUBBER + "&customer=" + id))
                .contains(owned, "value=\"Höfer &amp; 100% Söns\"")
                .doesNotContain(name);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            box=abc                       | value="abc"        | Please write four numbers
            box=1,2,3                     | value="1,2,3"      | Please write four numbers
            box=-44,168,-45,170           | value="-44,168     | Please write four numbers
            from=2026-05-02&to=2026-05-01 | value="2026-05-02" | before the first
            from=31.12.2026               | value="31.12.2026" | Please give a date
            sort=bogus                    | &quot;bogus&quot;  | is not a choice here
            state=%3Cb%3E                 | &quot;&lt;b&gt;    | is not a choice here
            kind=x&customer=Ash           | value="Ash"        | is not a choice here
            """)
    @DisplayName(
            "SEC-13 a filter that cannot be is said by its field, what was typed stays, and no rows pretend to fit")
    void sec13SaysWhatIsWrongWithAFilter(String query, String one, String other) {
        var answer =
                mvc.get().uri(URI.create("/due?" + query)).with(user(office())).exchange();

        assertThat(answer).hasStatus(400);
        assertThat(answer).bodyText().contains(one, other).doesNotContain(name);
        assertThat(mvc.get().uri(URI.create("/due.csv?" + query)).with(user(office())))
                .hasStatus(400);
    }

    @Test
    @DisplayName(
            "SEC-22 an id in the address stands, whatever else is sent under the same name; a choice made twice is refused")
    void sec22RepeatedNames() {
        UUID task = rubberTask(install);
        UUID other = rubberTask(installs.commissioned(
                sites.named("Other " + name), LocalDate.now(clock).minusYears(40)));

        assertThat(mvc.post()
                        .uri("/due/tasks/" + task + "/waiting?id=" + other)
                        .with(user(office()))
                        .with(csrf())
                        .param("id", other.toString())
                        .param("version", "0")
                        .param("waiting", "REFUSED")
                        .param("note", "on the phone"))
                .hasStatus3xxRedirection();

        assertThat(waiting(task)).isEqualTo("REFUSED");
        assertThat(waiting(other)).isEqualTo("OURS");
        assertThat(mvc.get()
                        .uri("/due?state=OVERDUE&state=LATER")
                        .with(user(office()))
                        .exchange())
                .hasStatus(400);
    }

    private UUID rubberTask(InstallId of) {
        return jdbc.sql("select id from service_tasks where install_id = ? and task_kind_id = ?::uuid limit 1")
                .params(of.value(), RUBBER)
                .query(UUID.class)
                .single();
    }

    private String waiting(UUID task) {
        return jdbc.sql("select waiting from service_tasks where id = ?")
                .param(task)
                .query(String.class)
                .single();
    }

    @Test
    void pagesByKey() {
        String first = get("/due?sort=DUE");
        String next = first.replaceAll("(?s).*href=\"(/due\\?[^\"]*after=[^\"]*)\".*", "$1")
                .replace("&amp;", "&");

        if (!next.equals(first)) {
            assertThat(get(next)).doesNotContain(name);
        }
    }

    @Test
    void givesTheListAsATable() {
        var answer = mvc.get()
                .uri("/due.csv?kind=" + RUBBER + "&state=OVERDUE")
                .with(user(office()))
                .exchange();

        assertThat(answer).hasStatusOk().hasContentType("text/csv;charset=UTF-8");
    }

    @Test
    void showsTheManagerTheRubbers() {
        var answer = mvc.get().uri("/overdue").with(user(as(Role.MANAGER))).exchange();

        assertThat(text(answer)).contains("Overdue for a valve-rubber change", name, "By depot and age", "ours");
        assertThat(mvc.get().uri("/overdue").with(user(as(Role.TECHNICIAN)))).hasStatus(403);
    }

    @Test
    void saysWhoseDelayItIs() {
        UUID task = task();

        assertThat(mvc.post()
                        .uri("/due/tasks/" + task + "/waiting")
                        .with(user(office()))
                        .with(csrf())
                        .param("version", "0")
                        .param("waiting", "PARTS")
                        .param("note", "rubber on order"))
                .hasStatus(302);

        assertThat(get("/due/tasks/" + task)).contains("rubber on order");
        assertThat(get("/due?waiting=PARTS")).contains(name);
    }

    @Test
    @DisplayName("SEC-14 a last day in the future is refused beside the field, and what was typed stays")
    void refusesAFutureLastDay() {
        var answer = mvc.post()
                .uri("/due/tasks/" + task() + "/last-done")
                .with(user(office()))
                .with(csrf())
                .param("version", "0")
                .param("_about", "on")
                .param("on", LocalDate.now(clock).plusDays(9).toString())
                .exchange();

        assertThat(answer).hasStatus(422);
        assertThat(text(answer))
                .contains("lies in the future", LocalDate.now(clock).plusDays(9).toString());
    }

    @Test
    void movesTheDueDateWithAStatedLastDay() {
        UUID task = task();
        LocalDate lastYear = LocalDate.now(clock).minusYears(1);

        assertThat(mvc.post()
                        .uri("/due/tasks/" + task + "/last-done")
                        .with(user(office()))
                        .with(csrf())
                        .param("version", "0")
                        .param("on", lastYear.toString())
                        .param("about", "true"))
                .hasStatus(302);

        assertThat(jdbc.sql("select due_on from service_tasks where id = ?")
                        .param(task)
                        .query(LocalDate.class)
                        .single())
                .isEqualTo(lastYear.plusYears(2));
    }

    @Test
    void saysByWhatRuleItIsDue() {
        jdbc.sql("update sites set water_class = 'SILTY' where id = (select site_id from installs where id = ?)")
                .param(install.value())
                .update();

        assertThat(get("/due/tasks/" + task(install, "CLEAN_STRAINER")))
                .containsPattern("every [^<]+</span><span>: [^<]+ × [0-9.]+ \\(the factor for [^<]+ water\\)")
                .contains("may be done");
        assertThat(get("/due/tasks/" + task(install, "OVERHAUL"))).contains("every ");
    }

    @Test
    void saysWhoDecidedAndSinceWhen() {
        UUID task = task();
        say(task, "/waiting", "0", "waiting", "CANNOT_REACH", "note", "gate locked");
        assertThat(get("/due/tasks/" + task)).contains("cannot reach", "since " + Say.day(today()), ", Marama");

        say(task, "/decision", "1", "doneBy", "DECLINED");
        assertThat(get("/due/tasks/" + task))
                .contains("Offered and declined", ", since " + Say.day(today()) + ", Marama")
                .doesNotContain("days late");
    }

    @Test
    @DisplayName(
            "SEC-14 a last day before the install was there is refused by its field; a stated one can be taken back")
    void refusesALastDayBeforeItWasThereAndTakesAStatedOneBack() {
        UUID task = task();
        assertThat(text(lastDone(task, "0", today().minusYears(41).toString())))
                .contains("before the install was commissioned (" + Say.day(today().minusYears(40)) + ")");
        UUID old = task(installs.ofUnknownAge(sites.named(name + " old")), "CLEAN_STRAINER");
        assertThat(text(lastDone(old, "0", "1850-01-01"))).contains("This day lies before 1900.");

        var unreadable = lastDone(old, "0", "31/12/2025");
        assertThat(unreadable).hasStatus(422);
        assertThat(text(unreadable)).contains("value=\"31/12/2025\"", "name=\"version\" value=\"0\"");

        assertThat(lastDone(old, "0", today().minusYears(1).toString())).hasStatus(302);
        assertThat(get("/due/tasks/" + old)).contains("as the office stated it", "Take the stated day back");
        say(old, "/last-done/forget", "1");
        assertThat(get("/due/tasks/" + old)).contains("nobody knows when").doesNotContain("Take the stated day back");
    }

    private MvcTestResult lastDone(UUID task, String version, String on) {
        return mvc.post()
                .uri("/due/tasks/" + task + "/last-done")
                .with(user(office()))
                .with(csrf())
                .param("version", version)
                .param("_about", "on")
                .param("on", on)
                .exchange();
    }

    private void say(UUID task, String what, String version, String... fields) {
        var post = mvc.post()
                .uri("/due/tasks/" + task + what)
                .with(user(office()))
                .with(csrf())
                .param("version", version);
        for (int i = 0; i < fields.length; i += 2) {
            post = post.param(fields[i], fields[i + 1]);
        }
        assertThat(post).hasStatus(302);
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }

    @Test
    void putsDownManyUnknownLastDaysAtOnceAndMovesNoneThatIsKnown() {
        InstallId old = installs.ofUnknownAge(sites.named(name + " b"));
        UUID before = task(installs.ofUnknownAge(sites.named(name + " a")), "CHANGE_WASTE_RUBBER");
        UUID strainer = task(old, "CLEAN_STRAINER");
        UUID seals = task(old, "INSPECT_SEALS");
        UUID known = task();
        LocalDate spring = LocalDate.now(clock).minusDays(50);

        var refused = unknown(before, strainer, spring.toString(), seals, "3 May");
        assertThat(refused).hasStatus(422);
        assertThat(text(refused)).contains("Give the day as", "3 May", spring.toString());
        assertThat(text(unknown(
                        before, strainer, LocalDate.now(clock).plusDays(1).toString(), seals, "")))
                .contains("lies in the future");
        assertThat(due(strainer)).isEmpty();

        assertThat(unknown(before, strainer, spring.toString(), known, spring.toString()))
                .hasStatus3xxRedirection();
        assertThat(due(strainer)).contains(spring.plusMonths(3));
        assertThat(due(seals)).isEmpty();
        assertThat(jdbc.sql("select stated_on from service_tasks where id = ?")
                        .param(known)
                        .query(LocalDate.class)
                        .optional())
                .isEmpty();
    }

    private MvcTestResult unknown(UUID before, UUID one, String day, UUID other, String otherDay) {
        return mvc.post()
                .uri("/due/unknown")
                .with(user(office()))
                .with(csrf())
                .param("after", after(before))
                .param("on." + one, day)
                .param("on." + other, otherDay)
                .exchange();
    }

    private String after(UUID task) {
        return Cursor.of(LocalDate.now(clock), task);
    }

    @Test
    void unknownLastDatesStandBySiteInstallAndKind() {
        SiteId second = sites.named(name + " c");
        InstallId top = installs.ofUnknownAge(second);
        InstallId first = installs.ofUnknownAge(sites.named(name + " B"));
        UUID before = task(installs.ofUnknownAge(sites.named(name + " a")), "INSPECT_SEALS");

        String page = get("/due/unknown?after=" + after(before));

        assertThat(page)
                .containsSubsequence(
                        name + " B", "Change delivery valve rubber", "Clean strainer", name + " c", "Clean strainer");
        assertThat(page.indexOf("on-" + task(first, "CLEAN_STRAINER")))
                .isBetween(1, page.indexOf("on-" + task(top, "CHANGE_DELIVERY_RUBBER")));
        assertThat(get("/due/unknown?after=" + after(task(first, "CLEAN_STRAINER"))))
                .doesNotContain("on-" + task(first, "CHANGE_DELIVERY_RUBBER"))
                .contains("on-" + task(top, "CHANGE_DELIVERY_RUBBER"));
    }

    private UUID task(InstallId at, String kind) {
        return jdbc.sql(
                        "select t.id from service_tasks t join task_kinds k on k.id = t.task_kind_id where t.install_id = ? and k.code = ?")
                .params(at.value(), kind)
                .query(UUID.class)
                .single();
    }

    private java.util.Optional<LocalDate> due(UUID task) {
        return jdbc.sql("select due_on from service_tasks where id = ? and due_on is not null")
                .param(task)
                .query(LocalDate.class)
                .optional();
    }

    @Test
    @DisplayName("SYN-10 a lost update is refused")
    void refusesALostUpdate() {
        UUID task = task();

        assertThat(mvc.post()
                        .uri("/due/tasks/" + task + "/decision")
                        .with(user(office()))
                        .with(csrf())
                        .param("version", "7")
                        .param("doneBy", "OWNER"))
                .hasStatus(409);
    }

    @Test
    void bringsTasksForwardAfterAFlood() {
        String day = LocalDate.now(clock).toString();
        String due = LocalDate.now(clock).plusDays(14).toString();
        String box = "-45.04,168.65,-45.02,168.67";
        var look = mvc.post()
                .uri("/weather-events")
                .with(user(office()))
                .with(csrf())
                .param("name", "Flood")
                .param("on", day)
                .param("due", due)
                .param("kind", "01900000-0000-7000-8000-000000000009")
                .param("box", box)
                .exchange();
        assertThat(text(look)).contains("It touches");

        assertThat(mvc.post()
                        .uri("/weather-events")
                        .with(user(office()))
                        .with(csrf())
                        .param("name", "Flood")
                        .param("on", day)
                        .param("due", due)
                        .param("kind", "01900000-0000-7000-8000-000000000009")
                        .param("box", box)
                        .param("sure", "yes"))
                .hasStatus(302);

        assertThat(jdbc.sql(
                                "select due_on from service_tasks where install_id = ? and task_kind_id = '01900000-0000-7000-8000-000000000009'")
                        .param(install.value())
                        .query(LocalDate.class)
                        .single())
                .isEqualTo(LocalDate.now(clock).plusDays(14));
    }

    @Test
    void asksWhereItFlooded() {
        var answer = mvc.post()
                .uri("/weather-events")
                .with(user(office()))
                .with(csrf())
                .param("name", "Flood at Ōhau")
                .exchange();

        assertThat(answer).hasStatus(422);
        assertThat(text(answer)).contains("Give a valley or a map box", "Flood at Ōhau");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "kind=x",
                "state=OPEN",
                "from=2026-02-30",
                "box=1,2,3",
                "box=a,b,c,d",
                "sort=name;--",
                "after=%27--",
                "water=%27%20or%201=1"
            })
    @DisplayName("SEC-04 SEC-13 odd filters are refused or match nothing, never a failure")
    void survivesOddFilters(String query) {
        assertThat(mvc.get()
                        .uri("/due?" + query)
                        .with(user(office()))
                        .exchange()
                        .getResponse()
                        .getStatus())
                .isIn(200, 400);
    }

    @Test
    void knowsNoOtherTask() {
        assertThat(mvc.get().uri("/due/tasks/" + UUID.randomUUID()).with(user(office())))
                .hasStatus(404);
    }

    private UUID task() {
        return jdbc.sql("select id from service_tasks where install_id = ? and task_kind_id = ?::uuid")
                .params(install.value(), RUBBER)
                .query(UUID.class)
                .single();
    }

    private String get(String uri) {
        var answer = mvc.get().uri(URI.create(uri)).with(user(office())).exchange();
        assertThat(answer).hasStatusOk();
        return text(answer);
    }

    private static String text(org.springframework.test.web.servlet.assertj.MvcTestResult answer) {
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private CurrentUser office() {
        return as(Role.OFFICE);
    }

    private CurrentUser as(Role role) {
        return new CurrentUser(Uuids.next(), person.value(), "login", "Somebody", Set.of(role), null);
    }
}
