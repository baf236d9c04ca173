package app.ramkeeper.rounds.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.rounds.week.Preparation;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** A technician's own hours by weekday. */
@PageTest
class OwnHoursTests {

    private static final Pattern SEEN = Pattern.compile("name=\"seen\" value=\"([^\"]*)\"");

    @Autowired
    MockMvcTester mvc;

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

    private PersonId ana;
    private LocalDate monday;

    @BeforeEach
    void register() {
        monday = LocalDate.now(clock)
                .with(TemporalAdjusters.next(DayOfWeek.MONDAY))
                .plusWeeks(80);
        ana = people.named("Ana Own");
        people.startTogether(ana);
    }

    @Test
    void planTheWeekByThemAndByTheCompanysOnceTheyAreRemoved() {
        preparation.prepare(monday, null);
        assertThat(day(0).from()).isEqualTo(450);
        assertThat(get("/rounds/hours")).hasStatusOk().bodyText().contains("Ana Own", own(), "as the company");
        assertThat(get(own())).hasStatusOk().bodyText().contains("07:30", "They work as the company");

        assertThat(post(own())
                        .param("from1", "09:00")
                        .param("until1", "14:30")
                        .param("longest1", "300")
                        .param("break1", "20")
                        .param("from2", "09:00")
                        .param("until2", "14:30")
                        .param("from6", "08:00")
                        .param("until6", "12:00"))
                .hasStatus3xxRedirection();

        assertThat(day(0))
                .extracting(TechDay::from, TechDay::until, TechDay::longest, TechDay::breakMinutes)
                .containsExactly(540, 870, 300, 20);
        assertThat(day(1).longest()).as("no longest day: the shift").isEqualTo(330);
        assertThat(week().round(ana.value(), monday.plusDays(2)))
                .as("Wednesday is blank")
                .isEmpty();
        assertThat(day(5).from()).as("Saturday, which the company has off").isEqualTo(480);
        assertThat(get("/rounds/hours"))
                .hasStatusOk()
                .bodyText()
                .contains("Mon, Tue 09:00\u201314:30; Sat 08:00\u201312:00");
        assertThat(get(own())).hasStatusOk().bodyText().contains("hours of their own", "href=\"/rounds/hours\"");
        assertThat(audited("insert")).isEqualTo(3);

        assertThat(post(own() + "/usual").param("seen", seen(own()))).hasStatus3xxRedirection();

        assertThat(day(0).from()).isEqualTo(450);
        assertThat(week().round(ana.value(), monday.plusDays(5))).isEmpty();
        assertThat(audited("delete")).isEqualTo(3);
        assertThat(jdbc.sql("select count(*) from shifts where person_id is null")
                        .query(Long.class)
                        .single())
                .as("the company keeps its hours")
                .isEqualTo(5);
    }

    @Test
    void areRefusedInWordsBesideTheFieldAndNothingTypedIsLost() {
        assertThat(post(own())
                        .param("from1", "16:00")
                        .param("until1", "08:00")
                        .param("from2", "08:00")
                        .param("until2", "12:00")
                        .param("longest2", "300")
                        .param("from3", "08:00")
                        .param("until3", "12:00")
                        .param("longest3", "four hours")
                        .param("from4", "08:00")
                        .param("from5", "08:00")
                        .param("until5", "12:00")
                        .param("break5", "240"))
                .hasStatus(422)
                .bodyText()
                .contains(
                        "id=\"until1-error\"",
                        "Monday: the shift ends at 08:00, before it starts at 16:00",
                        "id=\"longest2-error\"",
                        "the shift itself is 240 minutes long",
                        "id=\"longest3-error\"",
                        "Wednesday: give whole minutes",
                        "four hours",
                        "id=\"until4-error\"",
                        "Thursday: give both times",
                        "id=\"break5-error\"",
                        "value=\"16:00\"",
                        "value=\"240\"");
        assertThat(post(own())).hasStatus(422).bodyText().contains("Give the hours of one day at least");
        assertThat(audited("insert")).isZero();
    }

    @Test
    void areNotSavedOverWhatSomebodyElseSavedMeanwhile() {
        preparation.prepare(monday, null);
        String seen = seen(own());
        assertThat(post(own())
                        .param("seen", seen)
                        .param("from1", "09:00")
                        .param("until1", "14:30")
                        .param("break1", "15"))
                .hasStatus3xxRedirection();

        assertThat(post(own()).param("seen", seen).param("from1", "10:00").param("until1", "14:30"))
                .hasStatus(409)
                .bodyText()
                .contains(
                        "Somebody else saved this meanwhile",
                        ">Monday</a>",
                        "10:00\u201314:30, at most 270 min, break 0 min",
                        "09:00\u201314:30, at most 330 min, break 15 min",
                        "value=\"10:00\"")
                .doesNotContain(">Tuesday</a>");
        assertThat(post(own() + "/usual").param("seen", seen))
                .hasStatus(409)
                .bodyText()
                .contains("no hours", "09:00");
        assertThat(day(0).from()).as("the first change stands").isEqualTo(540);

        assertThat(post(own())
                        .param("seen", seen(own()))
                        .param("from1", "10:00")
                        .param("until1", "14:30"))
                .hasStatus3xxRedirection();
        assertThat(day(0).from()).as("decided upon").isEqualTo(600);
    }

    @Test
    void ofTheCompanyAreNotSavedOverEither() {
        String seen = seen("/rounds/hours");
        assertThat(post("/rounds/hours")
                        .param("seen", seen)
                        .param("from1", "06:00")
                        .param("until1", "14:00"))
                .hasStatus3xxRedirection();
        assertThat(post("/rounds/hours")
                        .param("seen", seen)
                        .param("from2", "08:00")
                        .param("until2", "12:00"))
                .hasStatus(409)
                .bodyText()
                .contains("06:00\u201314:00", "08:00\u201312:00", "value=\"08:00\"");
        assertThat(get("/rounds/hours")).bodyText().contains("value=\"06:00\"").doesNotContain("value=\"08:00\"");
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void ofNobodyAreMissing() {
        String nobody = "/rounds/hours/" + UUID.randomUUID();
        assertThat(get(nobody)).hasStatus(404);
        assertThat(post(nobody)).hasStatus(404);
        assertThat(post(nobody + "/usual")).hasStatus(404);
    }

    private String own() {
        return "/rounds/hours/" + ana.value();
    }

    /** The edition of the hours that a page's form carries. */
    private String seen(String page) {
        Matcher field = SEEN.matcher(body(get(page).exchange()));
        assertThat(field.find()).isTrue();
        return field.group(1);
    }

    private static String body(MvcTestResult result) {
        return new String(result.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private Week week() {
        return weeks.load(monday);
    }

    private TechDay day(int after) {
        return week().round(ana.value(), monday.plusDays(after)).orElseThrow();
    }

    private long audited(String what) {
        return jdbc.sql("""
                        select count(*) from audit_entries where table_name = 'shifts' and operation = :what
                          and coalesce(old_values, new_values) ->> 'person_id' = :person""")
                .param("what", what)
                .param("person", ana.value().toString())
                .query(Long.class)
                .single();
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
