package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.rounds.out.Publishing;
import app.ramkeeper.rounds.week.DayTimes;
import app.ramkeeper.rounds.week.Preparation;
import app.ramkeeper.rounds.week.RoundKey;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.WeekEdits;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.VisitKind;
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

/** What customers answer, and calls, change the plan of a published week. */
@PageTest
class AnswersTests {

    private static final AtomicInteger WEEK = new AtomicInteger();

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    FieldPeople people;

    @Autowired
    Preparation preparation;

    @Autowired
    WeekEdits edits;

    @Autowired
    Publishing publishing;

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
    void publish() {
        ana = people.named("Ana Weir");
        people.startTogether(ana);
        site = sites.named("Beck field " + Uuids.next().toString().substring(30));
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(60 + WEEK.incrementAndGet());
        publishedWeek(monday);
    }

    private void publishedWeek(LocalDate week) {
        preparation.prepare(week, ana.value());
        UUID stop = edits.add(by(week), site, 45, "look at the valve");
        edits.move(by(week), stop, ana.value(), week.plusDays(1), null, null);
        publishing.publish(by(week));
    }

    @Test
    void agreedHoldsTechnicianDayAndTime() {
        assertThat(answer("CONFIRMED")).hasStatus3xxRedirection();

        Stop stop = stop(monday);
        assertThat(stop.locked()).isTrue();
        assertThat(stop.fixedOn()).isEqualTo(monday.plusDays(1));
        assertThat(stop.fixedFrom()).isEqualTo(stop.publishedFrom());
    }

    @Test
    void whatTheCustomerWasOnlyToldIsNotCalledAgreed() {
        answer("TOLD");
        String page = "/rounds/" + monday + "/stops/" + stop(monday).id();
        assertThat(get(page))
                .bodyText()
                .contains("the customer was told " + Times.day(monday.plusDays(1)))
                .doesNotContain("agreed with the customer");
        answer("CONFIRMED");
        assertThat(get(page)).bodyText().contains("agreed with the customer for " + Times.day(monday.plusDays(1)));
    }

    @Test
    void publishesAnAgreedTimeThatTheVisitBeforeRunsALittleInto() {
        answer("CONFIRMED");
        signIn();
        LocalTime agreed = stop(monday).publishedFrom();
        UUID before = edits.add(by(monday), sites.named("Long field"), 60, "look");
        edits.move(
                by(monday),
                before,
                ana.value(),
                monday.plusDays(1),
                stop(monday).id(),
                null);
        double ends = weeks.load(monday)
                .times(new RoundKey(ana.value(), monday.plusDays(1)))
                .lineOf(before)
                .ends();
        LocalTime inside = LocalTime.ofSecondOfDay(60L * (long) ends).minusMinutes(7);
        jdbc.sql("update week_stops set fixed_from = ? where id = ?")
                .params(inside, stop(monday).id())
                .update();

        publishing.publish(by(monday));

        assertThat(stop(monday).publishedFrom()).isNotEqualTo(agreed).isAfter(inside);
    }

    @Test
    void aReasonCoversWhatItWasGivenForAndNotWhatComesAfter() {
        answer("CONFIRMED");
        signIn();
        LocalDate day = monday.plusDays(1);
        int agreed = stop(monday).publishedFrom().toSecondOfDay() / 60;
        edits.late(by(monday), ana.value(), day, agreed + 60);
        assertThat(broken()).isEqualTo(1);
        edits.excuse(by(monday), stop(monday).id(), "agreed by phone with the owner");
        assertThat(broken()).isZero();

        edits.late(by(monday), ana.value(), day, agreed + 65);
        assertThat(broken()).as("five minutes more").isZero();
        edits.late(by(monday), ana.value(), day, agreed + 200);
        assertThat(broken()).as("more than two hours more").isEqualTo(1);

        edits.late(by(monday), ana.value(), day, null);
        UUID before = edits.add(by(monday), sites.named("Long field"), 200, "look");
        edits.move(by(monday), before, ana.value(), day, stop(monday).id(), "the owner asked");
        assertThat(stop(monday).excuse())
                .as("the visit that comes later for it")
                .isEqualTo("the owner asked");
        assertThat(broken()).isZero();
    }

    private long broken() {
        return weeks.load(monday).breaches().stream()
                .filter(DayTimes.Breach::open)
                .filter(b -> b.stop().siteId().equals(site.value()))
                .count();
    }

    @Test
    void askedToMoveLeavesItsRoundAndBarsTheDay() {
        assertThat(answer("ASKED_TO_MOVE")).hasStatus3xxRedirection();

        Stop stop = stop(monday);
        assertThat(stop.placed()).isFalse();
        assertThat(stop.notOn()).isEqualTo(monday.plusDays(1));
        signIn();
        publishing.publish(by(monday));
        assertThat(jdbc.sql("select count(*) from visits where id = ? and planned_on is null")
                        .param(stop.visitId())
                        .query(Long.class)
                        .single())
                .isOne();
        preparation.prepare(monday, ana.value());
        assertThat(stop(monday).notOn()).as("remembered").isEqualTo(monday.plusDays(1));
    }

    @Test
    void theThirdFailedTryInARowTakesItOut() {
        answer("NO_ANSWER");
        answer("TOLD");
        answer("NO_ANSWER");
        answer("NO_ANSWER");
        assertThat(stop(monday).placed()).isTrue();

        answer("NO_ANSWER");

        assertThat(stop(monday).placed()).isFalse();
        assertThat(stop(monday).setAside()).contains("three tries");
        assertThat(get("/rounds/" + monday + "/compare"))
                .as("taken out, it has no place in one of the two plans")
                .hasStatusOk()
                .bodyText()
                .contains("in no round");
    }

    @Test
    void listsWhomToTellWithWordsAndAnswers() {
        assertThat(get("/rounds/" + monday + "/customers"))
                .hasStatusOk()
                .bodyText()
                .contains(stop(monday).site(), "Does that suit you?", "Nobody to ring is known");
        assertThat(post("/rounds/" + monday + "/customers/" + stop(monday).visitId(), "answer", "perhaps"))
                .hasStatus(422);
        assertThat(post(
                        "/rounds/" + monday + "/customers/mails",
                        "visit",
                        "" + stop(monday).visitId()))
                .hasStatus3xxRedirection();
        assertThat(stop(monday).answer()).isEqualTo("NONE");
    }

    @Test
    void whoIsStillToBeToldComesFirstDayByDay() {
        LocalDate day = Objects.requireNonNull(stop(monday).day());
        String page = "/rounds/" + monday + "/customers";
        assertThat(get(page))
                .bodyText()
                .contains("href=\"#d-" + day + "\"", Times.day(day) + ", 1 to tell")
                .doesNotContain("<details");

        assertThat(answer("TOLD")).hasRedirectedUrl(page + "#d-" + day);

        assertThat(get(page))
                .bodyText()
                .contains(Times.day(day) + ", all told")
                .containsSubsequence(
                        "<details", "1 told or answered", stop(monday).site());
    }

    /** Other tests leave visits of people without a depot in the present week. */
    private void withoutOthersVisits(LocalDate week) {
        jdbc.sql(
                        "update visits set state = 'CANCELLED', cancelled_reason = 'another test' where state = 'PLANNED' and planned_on between ? and ?")
                .params(week, week.plusDays(6))
                .update();
    }

    @Test
    void bringsACallIntoThisWeekAndTellsTheTechnician() {
        LocalDate today = LocalDate.now(clock);
        LocalDate week = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        for (int weekday = 1; weekday <= 7; weekday++) {
            jdbc.sql("""
                            insert into shifts (id, weekday, from_time, until_time, longest_minutes, break_minutes)
                            values (?, ?, '00:30', '23:30', 1380, 30) on conflict (person_id, weekday) do update
                            set from_time = '00:30', until_time = '23:30', longest_minutes = 1380""").params(Uuids.next(), weekday).update();
        }
        withoutOthersVisits(week);
        preparation.prepare(week, ana.value());
        UUID own = edits.add(by(week), site, 45, "look at the valve");
        edits.move(by(week), own, ana.value(), today, null, null);
        publishing.publish(by(week));
        SiteId dry = sites.named("Dry field");
        UUID call = Uuids.next();
        jdbc.sql(
                        "insert into calls (id, received_at, taken_by, site_id, symptom, people_dry) values (?, now(), ?, ?, 'LESS_WATER', true)")
                .params(call, ana.value(), dry.value())
                .update();

        MvcTestResult brought = post("/rounds/call-outs/" + call, "x", "y");

        String page = brought.getResponse().getRedirectedUrl();
        assertThat(page).contains("/rounds/" + week + "/stops/");
        assertThat(get(page)).hasStatusOk().bodyText().contains("Put it here and tell the technician");
        assertThat(post("/rounds/call-outs/" + call, "x", "y").getResponse().getRedirectedUrl())
                .isEqualTo(page);
        Stop before = weeks.load(week).stop(own).orElseThrow();
        MvcTestResult put = mvc.post()
                .uri(page + "/move")
                .param("version", "" + by(week).seen())
                .param("to", ana.value() + "/" + today)
                .param("before", own.toString())
                .param("tell", "true")
                .with(user(PageTest.As.who(ana, Role.OFFICE)))
                .with(csrf())
                .exchange();
        assertThat(put).hasStatus3xxRedirection();
        Stop callOut = weeks.load(week)
                .stop(UUID.fromString(page.substring(page.lastIndexOf('/') + 1)))
                .orElseThrow();
        Stop after = weeks.load(week).stop(own).orElseThrow();
        assertThat(callOut.kind()).isEqualTo(VisitKind.CALL_OUT.name());
        assertThat(callOut.publishedOn()).isEqualTo(today);
        assertThat(callOut.changedAt()).isNotNull();
        assertThat(after.publishedFrom()).as("timed again").isAfter(before.publishedFrom());
        assertThat(mvc.get()
                        .uri("/my-day")
                        .with(user(PageTest.As.who(ana, Role.TECHNICIAN)))
                        .exchange())
                .hasStatusOk()
                .bodyText()
                .contains("Dry field", "changed ");
        assertThat(mvc.get()
                        .uri("/field/bundle")
                        .with(user(PageTest.As.who(ana, Role.TECHNICIAN)))
                        .exchange())
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.planned[?(@.site == '" + dry.value() + "')].changed")
                .asArray()
                .singleElement()
                .isNotNull();
    }

    @Test
    void missesWhoDoesNotCheckInAfterAPublishedRound() {
        assertThat(jdbc.sql("select due_back_at from rounds_due_back where person_id = ? and day = ?")
                        .params(ana.value(), monday.plusDays(1))
                        .query((row, n) -> row.getTimestamp(1).toInstant())
                        .single())
                .isAfter(monday.plusDays(1)
                        .atTime(stop(monday).publishedFrom())
                        .atZone(clock.getZone())
                        .toInstant());
        jdbc.sql(
                        "update people set vehicle = 'white van 7', next_of_kin = 'Mo Weir', next_of_kin_phone = '027 555 01' where id = ?")
                .param(ana.value())
                .update();
        missed(LocalDate.now(clock), 20);
        assertThat(get("/")).bodyText().doesNotContain("white van 7");
        missed(LocalDate.now(clock), 40);
        jdbc.sql("update visits set planned_on = ?, planned_from = '00:00' where id = ?")
                .params(LocalDate.now(clock), stop(monday).visitId())
                .update();

        assertThat(get("/"))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "Not back",
                        "Ana Weir",
                        "white van 7",
                        "Mo Weir",
                        "027 555 01",
                        "Never checked out",
                        "Last known at " + stop(monday).site(),
                        "Not reported from yet: 00:00 " + stop(monday).site(),
                        "No telephone on file");

        assertThat(post("/rounds/back/" + ana.value(), "x", "y")).hasStatus3xxRedirection();
        assertThat(get("/")).bodyText().doesNotContain("white van 7");
    }

    private void missed(LocalDate day, int minutes) {
        jdbc.sql("update rounds_due_back set day = ?, due_back_at = ? where person_id = ?")
                .params(day, java.sql.Timestamp.from(clock.instant().minusSeconds(60L * minutes)), ana.value())
                .update();
    }

    /** A request leaves nobody signed in behind. */
    private static void signIn() {
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("ada", null, "ROLE_OFFICE", "ROLE_TECHNICIAN"));
    }

    private By by(LocalDate week) {
        return new By(week, weeks.plan(week).orElseThrow().version(), ana.value());
    }

    private Stop stop(LocalDate week) {
        List<Stop> there = weeks.load(week).stops().stream()
                .filter(s -> s.siteId().equals(site.value()))
                .toList();
        assertThat(there).hasSize(1);
        return there.get(0);
    }

    private MvcTestResult answer(String answer) {
        return post("/rounds/" + monday + "/customers/" + stop(monday).visitId(), "answer", answer);
    }

    private MvcTestResult get(String path) {
        return mvc.get().uri(path).with(user(PageTest.As.who(ana, Role.OFFICE))).exchange();
    }

    private MvcTestResult post(String path, String name, String value) {
        return mvc.post()
                .uri(path)
                .param(name, value)
                .with(user(PageTest.As.who(ana, Role.OFFICE)))
                .with(csrf())
                .exchange();
    }
}
