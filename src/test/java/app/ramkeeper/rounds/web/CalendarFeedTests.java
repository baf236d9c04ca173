package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.anonymous;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.signin.Tokens;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

@PageTest
class CalendarFeedTests {

    private static final AtomicInteger NETWORK = new AtomicInteger((int) (System.nanoTime() & 0xFFFF));

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    FieldPeople people;

    @Autowired
    Visits visits;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private final String address = "fd00:c:" + Integer.toHexString(NETWORK.incrementAndGet()) + "::1";
    private PersonId ana;
    private PersonId ben;
    private SiteId site;
    private LocalDate day;

    @BeforeEach
    void register() {
        ana = people.named("Ana Weir");
        ben = people.named("Ben Sluice");
        site = sites.named("Beck, upper; field");
        day = LocalDate.now(clock).plusDays(3);
        jdbc.sql(
                        "update sites set gate = 'code 4711', way_in = 'past the old kiln', locality = 'Upper Tarn' where id = ?")
                .param(site.value())
                .update();
    }

    @Test
    @DisplayName("reads back as a calendar of RFC 5545 with the person's visits only")
    void readsBack() throws Exception {
        VisitId timed = plan(ana, LocalTime.of(9, 5), day);
        VisitId open = plan(ana, null, day.plusDays(1));
        VisitId cancelled = plan(ana, LocalTime.of(14, 0), day);
        visits.cancel(cancelled, "not needed");
        plan(ben, LocalTime.of(9, 0), day);

        MvcTestResult feed = feed(make(ana));

        assertThat(feed).hasStatusOk().hasHeader("X-Robots-Tag", "noindex, nofollow");
        assertThat(feed.getResponse().getContentType()).isEqualTo("text/calendar;charset=UTF-8");
        String text = feed.getResponse().getContentAsString();
        assertThat(text.lines()).allMatch(line -> line.getBytes(java.nio.charset.StandardCharsets.UTF_8).length <= 75);
        Calendar calendar = new CalendarBuilder().build(new StringReader(text));
        calendar.validate(true);
        assertThat(calendar.getComponents("VEVENT")).hasSize(2);
        VEvent event = event(calendar, timed);
        Instant from = day.atTime(9, 5).atZone(clock.getZone()).toInstant();
        assertThat(Instant.from(event.getStartDate().orElseThrow().getDate())).isEqualTo(from);
        assertThat(Instant.from(event.getEndDate().orElseThrow().getDate())).isEqualTo(from.plusSeconds(45 * 60));
        assertThat(value(event, "SUMMARY")).endsWith(": Beck, upper; field");
        assertThat(value(event, "LOCATION")).isEqualTo("Upper Tarn");
        assertThat(value(event, "STATUS")).isEqualTo("TENTATIVE");
        assertThat(value(event(calendar, open), "DTSTART"))
                .isEqualTo(day.plusDays(1).toString().replace("-", ""));
        assertThat(text).doesNotContain("4711", "kiln");
    }

    @Test
    @DisplayName(
            "FLT-31 hard names come through two readers as they were typed, folded at 75 octets within no character")
    void flt31HardNames() throws Exception {
        String hard = "Ewe, ram; C:\\new \\N gate: \"Māhina\" "
                + "\uD83D\uDC11\uD83D\uDC69\u200D\uD83C\uDF3E".repeat(12) + " مزرعة כבשים";
        jdbc.sql("update sites set name = ?, locality = ? where id = ?")
                .params(hard, "a,b;c\\d é" + "ü".repeat(90), site.value())
                .update();
        plan(ana, LocalTime.of(9, 5), day);

        byte[] feed = feed(make(ana)).getResponse().getContentAsByteArray();

        VEvent event = (VEvent) new CalendarBuilder()
                .build(new ByteArrayInputStream(feed))
                .getComponents("VEVENT")
                .get(0);
        assertThat(value(event, "SUMMARY")).endsWith(": " + hard);
        List<Map<String, String>> events = PlainCalendar.events(feed);
        assertThat(events)
                .singleElement()
                .satisfies(other -> assertThat(other.get("SUMMARY")).isEqualTo(value(event, "SUMMARY")));
        assertThat(events.get(0).get("LOCATION"))
                .isEqualTo(value(event, "LOCATION"))
                .isEqualTo("a,b;c\\d é" + "ü".repeat(90));
    }

    @Test
    @DisplayName("FLT-31 5,000 visits are fed in less than 2 seconds, and two readers see the same ones")
    void flt31ManyVisits() throws Exception {
        jdbc.sql("""
                        with made as (
                          insert into visits (id, site_id, kind, planned_on, minutes, state)
                          select gen_random_uuid(), :site, 'SERVICE', :day, 45, 'PLANNED' from generate_series(1, 5000) returning id)
                        insert into visit_people (visit_id, person_id, lead) select id, :ana, true from made""")
                .param("site", site.value())
                .param("day", day)
                .param("ana", ana.value())
                .update();
        String path = make(ana);

        byte[] feed = feed(path).getResponse().getContentAsByteArray();
        assertThat(quickestOfThree(path)).isLessThan(Duration.ofSeconds(2));

        List<String> one = new CalendarBuilder()
                .build(new ByteArrayInputStream(feed)).<VEvent>getComponents("VEVENT").stream()
                        .map(event -> value(event, "UID"))
                        .toList();
        assertThat(one).hasSize(5000).doesNotHaveDuplicates();
        assertThat(PlainCalendar.events(feed))
                .extracting(event -> event.get("UID"))
                .isEqualTo(one);
    }

    @Test
    void isACalendarAlsoWhenNothingIsPlanned() throws Exception {
        String text = feed(make(ana)).getResponse().getContentAsString();

        Calendar calendar = new CalendarBuilder().build(new StringReader(text));
        calendar.validate(true);
        assertThat(calendar.getComponents()).hasSize(1);
    }

    @Test
    void countsUpWhenAVisitMoves() throws Exception {
        VisitId visit = plan(ana, LocalTime.of(9, 0), day);
        String path = make(ana);
        int before = Integer.parseInt(value(event(read(path), visit), "SEQUENCE"));
        jdbc.sql("update visits set planned_from = '10:00', answer = 'CONFIRMED', version = version + 1 where id = ?")
                .param(visit.value())
                .update();

        VEvent moved = event(read(path), visit);

        assertThat(Integer.parseInt(value(moved, "SEQUENCE"))).isGreaterThan(before);
        assertThat(value(moved, "STATUS")).isEqualTo("CONFIRMED");
    }

    @Test
    @DisplayName("SEC-57 SEC-67 keeps only the hash of the link's secret, of 256 random bits")
    void keepsOnlyTheHash() {
        String token = make(ana).split("/")[2];

        assertThat(java.util.Base64.getUrlDecoder().decode(token)).hasSize(32);
        assertThat(jdbc.sql("select token_hash from calendar_links where person_id = ? and revoked_at is null")
                        .param(ana.value())
                        .query(byte[].class)
                        .single())
                .isEqualTo(Tokens.hash(token));
        assertThat(jdbc.sql("select count(*) from audit_entries a where a::text like ?")
                        .param("%" + token + "%")
                        .query(Long.class)
                        .single())
                .isZero();
        assertThat(jdbc.sql("select count(*) from audit_entries where table_name = 'calendar_links'")
                        .query(Long.class)
                        .single())
                .isPositive();
    }

    @Test
    @DisplayName("SEC-61 SEC-69 a wrong, a revoked, a replaced link and that of somebody who left look alike")
    void endsAtOnce() {
        assertThat(feed("/calendar/" + Tokens.next() + "/rounds.ics")).hasStatus(404);
        String first = make(ana);
        String second = make(ana);
        assertThat(feed(first)).hasStatus(404);
        assertThat(feed(second)).hasStatusOk();
        assertThat(as(ben, Role.OFFICE, "/rounds/calendars/" + ana.value() + "/revoke"))
                .hasStatus3xxRedirection();
        assertThat(feed(second)).hasStatus(404);
        String third = make(ana);
        jdbc.sql("update people set left_on = ? where id = ?")
                .params(LocalDate.now(clock).minusDays(1), ana.value())
                .update();
        assertThat(feed(third)).hasStatus(404);
    }

    @Test
    @DisplayName("SEC-64 nothing else opens with the link")
    void opensNothingElse() {
        String path = make(ana);
        assertThat(feed(path)).hasStatusOk();
        for (String other :
                List.of(path.replace("rounds.ics", ""), path + "/x", path.replace("rounds.ics", "my-day"))) {
            assertThat(feed(other).getResponse().getStatus()).as(other).isIn(302, 401, 403);
        }
        assertThat(mvc.post()
                        .uri(path)
                        .with(anonymous())
                        .with(csrf())
                        .exchange()
                        .getResponse()
                        .getStatus())
                .isIn(302, 401, 403, 405);
    }

    @Test
    @DisplayName("SEC-20 slows whoever guesses links")
    void slowsGuessing() {
        int last = 0;
        for (int i = 0; i < 70 && last != 429; i++) {
            last = feed("/calendar/guess" + i + "/rounds.ics").getResponse().getStatus();
        }
        assertThat(last).isEqualTo(429);
    }

    @Test
    void showsTheAddressOnceAndEndsIt() {
        plan(ana, null, day);
        assertThat(get(ana, Role.TECHNICIAN, "/my-day/calendar"))
                .hasStatusOk()
                .bodyText()
                .contains("There is no link");
        make(ana);
        assertThat(get(ana, Role.TECHNICIAN, "/my-day/calendar"))
                .hasStatusOk()
                .bodyText()
                .contains("A link works since", "End the link")
                .doesNotContain("rounds.ics");
        assertThat(as(ana, Role.TECHNICIAN, "/my-day/calendar/revoke")).hasStatus3xxRedirection();
        assertThat(get(ben, Role.OFFICE, "/rounds/calendars"))
                .hasStatusOk()
                .bodyText()
                .contains("Ana Weir");
    }

    /** What else the machine does at the same time is not the feed's. */
    private Duration quickestOfThree(String path) {
        Duration quickest = Duration.ofDays(1);
        for (int i = 0; i < 3; i++) {
            long from = System.nanoTime();
            assertThat(feed(path)).hasStatusOk();
            Duration took = Duration.ofNanos(System.nanoTime() - from);
            quickest = took.compareTo(quickest) < 0 ? took : quickest;
        }
        return quickest;
    }

    private VisitId plan(PersonId who, LocalTime from, LocalDate on) {
        return visits.plan(new PlanVisit(site, VisitKind.SERVICE, on, from, 45, List.of(who), List.of(), null));
    }

    private String make(PersonId who) {
        MvcTestResult made = as(who, Role.TECHNICIAN, "/my-day/calendar");
        assertThat(made).hasStatus3xxRedirection();
        String address = (String) made.getMvcResult().getFlashMap().get("address");
        return java.net.URI.create(address).getPath();
    }

    private Calendar read(String path) throws Exception {
        return new CalendarBuilder()
                .build(new StringReader(feed(path).getResponse().getContentAsString()));
    }

    private static VEvent event(Calendar calendar, VisitId visit) {
        return calendar.<VEvent>getComponents("VEVENT").stream()
                .filter(e -> value(e, "UID").equals(visit.value().toString()))
                .findFirst()
                .orElseThrow();
    }

    private static String value(VEvent event, String name) {
        return event.getProperty(name).orElseThrow().getValue();
    }

    private MvcTestResult feed(String path) {
        return mvc.get()
                .uri(path)
                .with(anonymous())
                .with(request -> {
                    request.setRemoteAddr(address);
                    return request;
                })
                .exchange();
    }

    private MvcTestResult get(PersonId who, Role role, String path) {
        return mvc.get().uri(path).with(user(PageTest.As.who(who, role))).exchange();
    }

    private MvcTestResult as(PersonId who, Role role, String path) {
        return mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(who, role)))
                .with(csrf())
                .exchange();
    }
}
