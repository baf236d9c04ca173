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
import app.ramkeeper.rounds.week.Comparison;
import app.ramkeeper.rounds.week.Openings;
import app.ramkeeper.rounds.week.RoundKey;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.rounds.week.WorkingHours;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

@PageTest
class WeekPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    WeekStore weeks;

    @Autowired
    WorkingHours hours;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    /** Each test plans a week of its own: a plan of another would be brought up to date, not made. */
    private static final AtomicInteger WEEK = new AtomicInteger();

    private PersonId ana;
    private PersonId ben;
    private SiteId near;
    private LocalDate monday;

    @BeforeEach
    void register() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(20 + WEEK.incrementAndGet());
        ana = people.named("Ana Weir");
        ben = people.named("Ben Sluice");
        people.startTogether(ana, ben);
        near = sites.named("Beck field " + Uuids.next().toString().substring(30));
        due(near);
    }

    private void due(SiteId site) {
        InstallId install = installs.commissioned(site, monday.minusYears(3));
        jdbc.sql("""
                        update service_tasks set due_on = d.due, window_from = d.due - 30, window_until = d.due + 20, asleep_since = null, wakes_on = null
                        from (select k.id, case when k.code = 'CLEAN_STRAINER' then :due::date else :due::date + 900 end as due from task_kinds k) d
                        where install_id = :install and task_kind_id = d.id""")
                .param("due", monday.minusDays(30))
                .param("install", install.value())
                .update();
    }

    @Test
    void makesAPlanAndMovesAVisit() {
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("no plan yet");
        assertThat(post("/rounds/" + monday + "/prepare")).hasStatus3xxRedirection();

        Stop stop = stopAt(near);
        assertThat(stop.must()).isTrue();
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("Ana Weir", "Ben Sluice", stop.site());
        assertThat(get("/rounds/" + monday + "/stops/" + stop.id()))
                .hasStatusOk()
                .bodyText()
                .contains("driving, starts");

        assertThat(move(stop, ana, monday.plusDays(1), version())).hasStatus3xxRedirection();
        assertThat(stopAt(near).personId()).isEqualTo(ana.value());
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("sets out", "Moved " + stop.site());
        assertThat(get("/rounds/" + monday + "/rounds/" + ana.value() + "/" + monday.plusDays(1)))
                .hasStatusOk()
                .bodyText()
                .contains("In order", stop.site(), "polyline");
        assertThat(get("/rounds/" + monday + "/add?site=" + near.value()))
                .hasStatusOk()
                .bodyText()
                .contains("already");
    }

    @Test
    void aMoveByHandGivesWhatThePageSaidOfTheRound() {
        SiteId other = sites.named("Weir flat " + near.value().toString().substring(30));
        due(other);
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(move(stopAt(near), ana, monday, version())).hasStatus3xxRedirection();
        Week before = weeks.load(weeks.plan(monday).orElseThrow());
        Openings.Opening said = Objects.requireNonNull(new Openings(before, monday)
                .in(before.round(ana.value(), monday).orElseThrow(), stopAt(other)));

        assertThat(move(stopAt(other), ana, monday, version())).hasStatus3xxRedirection();

        Week after = weeks.load(weeks.plan(monday).orElseThrow());
        List<UUID> order = after.stopsOf(new RoundKey(ana.value(), monday)).stream()
                .map(Stop::siteId)
                .toList();
        assertThat(order).hasSize(2);
        assertThat(order.indexOf(other.value())).isEqualTo(said.before() == null ? 1 : 0);
        assertThat(after.times(new RoundKey(ana.value(), monday)).back()).isEqualTo(said.back());
    }

    @Test
    void losesNothingWhenTwoPlanAtOnce() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        int seen = version();
        assertThat(move(stop, ana, monday, seen)).hasStatus3xxRedirection();

        assertThat(move(stop, ben, monday.plusDays(2), seen))
                .hasStatus(409)
                .bodyText()
                .contains(
                        "changed meanwhile",
                        "Moved " + stop.site(),
                        ben.value() + "/" + monday.plusDays(2),
                        "Ben Sluice, " + Times.day(monday.plusDays(2)));
        assertThat(stopAt(near).personId()).isEqualTo(ana.value());
    }

    @Test
    void undoesStepByStep() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        assertThat(move(stop, ana, monday, version())).hasStatus3xxRedirection();
        assertThat(move(stop, ben, monday, version())).hasStatus3xxRedirection();

        undo();
        assertThat(stopAt(near).personId()).isEqualTo(ana.value());
        undo();
        assertThat(stopAt(near).placed()).isFalse();
        assertThat(undo()).hasStatus(409).bodyText().contains("nothing left to undo");
    }

    @Test
    void refusesWhatCannotBeReadBesideTheField() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        String base = "/rounds/" + monday + "/stops/" + stop.id();
        assertThat(post(base + "/move").param("version", "" + version()).param("to", "nowhere"))
                .hasStatus(422)
                .bodyText()
                .contains("Choose whose round");
        assertThat(post(base + "/set-aside").param("version", "" + version()).param("reason", " "))
                .hasStatus(422)
                .bodyText()
                .contains("Say why");
        assertThat(post("/rounds/" + monday + "/add")
                        .param("version", "" + version())
                        .param("site", near.value().toString())
                        .param("minutes", "soon"))
                .hasStatus(422)
                .bodyText()
                .contains("Say what the visit is for", "Give a number", "soon");
    }

    @Test
    void publishesOnceAndTellsOnlyWhatChanged() throws Exception {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        move(stop, ana, monday.plusDays(1), version()).exchange();

        assertThat(publish(version())).hasStatus3xxRedirection();
        Stop told = stopAt(near);
        assertThat(told.publishedOn()).isEqualTo(monday.plusDays(1));
        assertThat(jdbc.sql("select planned_on from visits where id = ? and state = 'PLANNED'")
                        .param(told.visitId())
                        .query(LocalDate.class)
                        .single())
                .isEqualTo(monday.plusDays(1));
        assertThat(jdbc.sql("select count(*) from visit_tasks where visit_id = ?")
                        .param(told.visitId())
                        .query(Long.class)
                        .single())
                .isPositive();
        publish(version());
        assertThat(visitsAt(near)).isOne();

        move(stop, ben, monday.plusDays(2), version()).exchange();
        publish(version());
        assertThat(stopAt(near).publishedTo()).isEqualTo(ben.value());
        assertThat(stopAt(near).changedAt()).isNotNull();
        assertThat(visitsAt(near)).isOne();
        assertThat(jdbc.sql("select person_id from visit_people where visit_id = ?")
                        .param(told.visitId())
                        .query(UUID.class)
                        .list())
                .containsExactly(ben.value());

        UUID owner = Uuids.next();
        jdbc.sql("insert into customers (id, name, phone) values (?, 'Owner Weir', '00 555 7788')")
                .param(owner)
                .update();
        jdbc.sql("insert into site_parties (id, site_id, part, customer_id, until_date) values (?, ?, 'OWNER', ?, ?)")
                .params(Uuids.next(), near.value(), owner, monday.plusDays(4))
                .update();
        String sheet = "/rounds/" + monday + "/sheets/" + ben.value() + "/" + monday.plusDays(2);
        assertThat(get(sheet))
                .hasStatusOk()
                .bodyText()
                .contains("Run sheet: Ben Sluice", stop.site(), "Owner Weir (owner), 00 555 7788", "prove zero");
        assertThat(get(sheet + "/round.gpx")).hasStatusOk().bodyText().contains("<gpx", stop.site());
        byte[] paper = get(sheet + "/sheet.pdf").exchange().getResponse().getContentAsByteArray();
        assertThat(new String(paper, 0, 5, java.nio.charset.StandardCharsets.US_ASCII))
                .isEqualTo("%PDF-");
        assertThat(get("/rounds/" + monday + "/parts")).hasStatusOk();
    }

    @Test
    void publishesNothingThatBreaksARuleUnexplained() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        jdbc.sql("insert into person_leave (id, person_id, from_date, until_date) values (?, ?, ?, ?)")
                .params(Uuids.next(), ana.value(), monday, monday.plusDays(6))
                .update();
        move(stop, ana, monday, version()).exchange();
        assertThat(publish(version())).hasStatus(409).bodyText().contains("Not published", stop.site());
        assertThat(post("/rounds/" + monday + "/publish")
                        .param("version", "" + version())
                        .header("Referer", "http://localhost/rounds/" + monday))
                .hasStatus(409)
                .bodyText()
                .contains("href=\"/rounds/" + monday + "\"");
        assertThat(visitsAt(near)).isZero();
    }

    @Test
    void whoHasNowhereToStartFromStandsInNoWayOfTheOthers() {
        String past = "Old Hand " + near.value().toString().substring(30);
        PersonId hand = people.named(past);
        post("/rounds/" + monday + "/prepare").exchange();

        Week week = weeks.load(weeks.plan(monday).orElseThrow());
        assertThat(week.rounds()).noneMatch(r -> r.personId().equals(hand.value()));
        assertThat(week.nowhere()).contains(past);
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("Without rounds", past);
    }

    @Test
    void whatOneMayDoNeedNotWaitForTwo() {
        jdbc.sql("""
                        update service_tasks set due_on = :due, window_from = :due - 30, window_until = :due + 20
                        where install_id in (select id from installs where site_id = :site)
                          and task_kind_id = (select id from task_kinds where code = 'OVERHAUL')""")
                .param("due", monday.minusDays(60))
                .param("site", near.value())
                .update();
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(stopsAt(near)).extracting(Stop::crew).containsExactlyInAnyOrder(1, 2);
        Stop alone =
                stopsAt(near).stream().filter(s -> s.crew() == 1).findFirst().orElseThrow();
        assertThat(alone.tasks()).contains("Clean strainer").doesNotContain("Overhaul");
        assertThat(move(alone, ana, monday, version())).hasStatus3xxRedirection();

        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(stopsAt(near)).hasSize(2);
        assertThat(stopsAt(near))
                .filteredOn(s -> s.id().equals(alone.id()))
                .singleElement()
                .matches(s -> ana.value().equals(s.personId()));

        assertThat(post("/rounds/" + monday + "/rounds/" + ben.value() + "/" + monday + "/pair")
                        .param("version", "" + version())
                        .param("mate", ana.value().toString()))
                .hasStatus3xxRedirection();
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(stopsAt(near)).singleElement().matches(s -> s.crew() == 2);
    }

    private List<Stop> stopsAt(SiteId site) {
        return weeks.load(weeks.plan(monday).orElseThrow()).stops().stream()
                .filter(s -> s.siteId().equals(site.value()))
                .toList();
    }

    @Test
    void comparesTwoPlansOfTheWeek() {
        post("/rounds/" + monday + "/prepare").exchange();
        Stop stop = stopAt(near);
        String compare = "/rounds/" + monday + "/compare";
        assertThat(get(compare))
                .hasStatusOk()
                .bodyText()
                .contains("only one plan of this week")
                .doesNotContain("<select");
        move(stop, ana, monday, version()).exchange();
        int first = version();
        assertThat(get(compare)).hasStatusOk().bodyText().contains("What moved (1)", "in no round");
        move(stop, ben, monday.plusDays(2), first).exchange();
        assertThat(post("/rounds/" + monday + "/stops/" + stop.id() + "/lock")
                        .param("version", "" + version())
                        .param("locked", "true"))
                .hasStatus3xxRedirection();
        assertThat(get(compare))
                .as("locked, it stands where it stood: the last other plan is the one before the move")
                .hasStatusOk()
                .bodyText()
                .contains("What moved (1)", "Ana Weir, " + Times.day(monday));

        assertThat(get("/rounds/" + monday + "/compare?one=" + first + "&other=" + version()))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "What moved (1)",
                        "Ana Weir, " + Times.day(monday),
                        "Ben Sluice, " + Times.day(monday.plusDays(2)));
        Comparison comparison = Comparison.of(
                weeks.loadAs(weeks.plan(monday).orElseThrow(), 1),
                weeks.loadAs(weeks.plan(monday).orElseThrow(), first));
        assertThat(comparison.driving()).as("from nothing to one round").isPositive();
        assertThat(comparison.before().lateDays())
                .as("a week out is later than its Monday")
                .isEqualTo(comparison.after().lateDays() + 7);
        assertThat(get("/rounds/" + monday + "/compare?one=99")).hasStatus(404);
    }

    @Test
    void keepsStartsEndsAndRoads() {
        assertThat(post("/rounds/places/people/" + ana.value())
                        .param("starts", "true")
                        .param("place", "over there"))
                .hasStatus(422)
                .bodyText()
                .contains("over there");
        assertThat(post("/rounds/places/people/" + ana.value())
                        .param("starts", "true")
                        .param("place", "-45.10, 168.80"))
                .hasStatus3xxRedirection();
        post("/rounds/" + monday + "/prepare").exchange();
        var round = weeks.load(monday).round(ana.value(), monday).orElseThrow();
        assertThat(round.start().latitude()).isEqualTo(-45.10);
        assertThat(round.end().latitude()).isEqualTo(-45.02);
        assertThat(post("/rounds/places/people/" + ana.value()).param("version", "0"))
                .hasStatus3xxRedirection();
        assertThat(weeks.load(monday)
                        .round(ana.value(), monday)
                        .orElseThrow()
                        .start()
                        .latitude())
                .isEqualTo(-45.02);

        assertThat(post("/rounds/places/areas").param("name", "Gorge").param("factor", "9"))
                .hasStatus(422)
                .bodyText()
                .contains("Gorge", "Give a number from 1 to 5", "Give a position");
        assertThat(post("/rounds/places/areas")
                        .param("name", "Gorge")
                        .param("corner", "-45.5, 168.2")
                        .param("opposite", "-44.5, 169.2")
                        .param("factor", "3")
                        .param("speed", "20"))
                .hasStatus3xxRedirection();
        move(stopAt(near), ana, monday, version()).exchange();
        double slow = weeks.load(monday).totals().driveMinutes();
        UUID area = jdbc.sql("select id from travel_areas where name = 'Gorge'")
                .query(UUID.class)
                .single();
        assertThat(get("/rounds/places?area=" + area))
                .hasStatusOk()
                .bodyText()
                .contains("Change the area", "-45.5, 168.2");
        assertThat(post("/rounds/places/areas/" + area + "/remove").param("version", "0"))
                .hasStatus3xxRedirection();
        assertThat(weeks.load(monday).totals().driveMinutes()).isLessThan(slow / 1.5);
    }

    @Test
    void keepsWorkingHoursAndHolidays() {
        String seen = WorkingHours.edition(hours.usual());
        assertThat(get("/rounds/hours")).hasStatusOk().bodyText().contains("Monday", "07:30", seen);
        assertThat(post("/rounds/hours").param("from1", "08:00").param("until1", "07:00"))
                .hasStatus(422)
                .bodyText()
                .contains("Monday: the shift ends at 07:00, before it starts at 08:00", "08:00");
        MockMvcRequestBuilder all = post("/rounds/hours").param("seen", seen);
        for (int weekday = 1; weekday <= 6; weekday++) {
            all.param("from" + weekday, "07:30")
                    .param("until" + weekday, "17:00")
                    .param("longest" + weekday, "540")
                    .param("break" + weekday, "30");
        }
        assertThat(all).hasStatus3xxRedirection();
        assertThat(jdbc.sql("select count(*) from shifts where person_id is null")
                        .query(Long.class)
                        .single())
                .isEqualTo(6);
        assertThat(post("/rounds/holidays").param("day", "soon").param("name", "Feast"))
                .hasStatus(422)
                .bodyText()
                .contains("Feast", "soon");
        assertThat(post("/rounds/holidays")
                        .param("day", monday.plusDays(1).toString())
                        .param("name", "Feast"))
                .hasStatus3xxRedirection();
        assertThat(post("/rounds/holidays")
                        .param("day", monday.plusDays(1).toString())
                        .param("name", "Fair"))
                .as("somebody else put it down under another name")
                .hasStatus(422)
                .bodyText()
                .contains("This day is Feast already", "value=\"Fair\"");
        post("/rounds/" + monday + "/prepare").exchange();
        assertThat(get("/rounds/" + monday)).hasStatusOk().bodyText().contains("Feast");
    }

    @Test
    void placesAndRoadsAreNotSavedOverWhatSomebodyElseSavedMeanwhile() {
        String place = "/rounds/places/people/" + ana.value();
        assertThat(post(place).param("starts", "true").param("place", "-45.1, 168.8"))
                .hasStatus3xxRedirection();
        assertThat(get("/rounds/places")).bodyText().contains("-45.1, 168.8");
        assertThat(post(place).param("ends", "true").param("place", "-45.2, 168.9"))
                .as("both saw that there was none")
                .hasStatus(409)
                .bodyText()
                .contains("Somebody else saved this meanwhile", "-45.1, 168.8", "value=\"-45.2, 168.9\"");
        assertThat(post(place)).as("nor does it forget it").hasStatus(409);
        assertThat(post(place).param("version", "0").param("ends", "true").param("place", "-45.2, 168.9"))
                .hasStatus3xxRedirection();
        assertThat(post(place).param("version", "0")).hasStatus(409).bodyText().contains("-45.2, 168.9");

        assertThat(area(null, null, "3")).hasStatus3xxRedirection();
        UUID id = jdbc.sql("select id from travel_areas where name = 'Gorge'")
                .query(UUID.class)
                .single();
        assertThat(area(id, "0", "2")).hasStatus3xxRedirection();
        assertThat(area(id, "0", "4"))
                .hasStatus(409)
                .bodyText()
                .contains("Somebody else saved this meanwhile", "value=\"4\"", "name=\"version\" value=\"1\"");
        assertThat(jdbc.sql("select road_factor from travel_areas where id = ?")
                        .param(id)
                        .query(Double.class)
                        .single())
                .isEqualTo(2);
        assertThat(area(id, "1", "4")).hasStatus3xxRedirection();
        assertThat(post("/rounds/places/areas/" + id + "/remove").param("version", "1"))
                .hasStatus(409)
                .bodyText()
                .contains("Gorge", "was not removed");
    }

    private MvcTestResult area(@Nullable UUID id, @Nullable String version, String factor) {
        MockMvcRequestBuilder request = post("/rounds/places/areas")
                .param("name", "Gorge")
                .param("corner", "-45.5, 168.2")
                .param("opposite", "-44.5, 169.2")
                .param("factor", factor)
                .param("speed", "20");
        if (id != null) {
            request.param("id", id.toString()).param("version", version);
        }
        return request.exchange();
    }

    private MvcTestResult publish(int version) {
        return post("/rounds/" + monday + "/publish")
                .param("version", "" + version)
                .exchange();
    }

    private long visitsAt(SiteId site) {
        return jdbc.sql("select count(*) from visits where site_id = ?")
                .param(site.value())
                .query(Long.class)
                .single();
    }

    private MvcTestResult undo() {
        return post("/rounds/" + monday + "/undo")
                .param("version", "" + version())
                .exchange();
    }

    private MockMvcRequestBuilder move(Stop stop, PersonId to, LocalDate day, int version) {
        return post("/rounds/" + monday + "/stops/" + stop.id() + "/move")
                .param("version", "" + version)
                .param("to", to.value() + "/" + day);
    }

    private int version() {
        return weeks.plan(monday).orElseThrow().version();
    }

    /** The one stop there; where a site has a part for two people besides, take it by its crew. */
    private Stop stopAt(SiteId site) {
        List<Stop> there = stopsAt(site);
        assertThat(there).hasSize(1);
        return there.get(0);
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
