package app.ramkeeper.visits.fieldday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.VisitRecorder;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** Leaving and coming back, and what a visit left to do. */
@PageTest
class FieldDayPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Sites sites;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private PersonId ada;

    @BeforeEach
    void somebody() {
        ada = people.named("Ada Fell");
    }

    @Test
    void whoLeavesIsOutUntilTheySayTheyAreBack() {
        // 23:59 is past for one minute of the day only
        assertThat(post("/my-day/leave", "dueBack", "23:59")).hasStatus3xxRedirection();
        assertThat(text(get("/my-day", Role.TECHNICIAN))).contains("23:59");
        assertThat(out()).isEqualTo(1);

        assertThat(post("/my-day/back")).hasStatus3xxRedirection();
        assertThat(post("/my-day/back")).hasStatus3xxRedirection();
        assertThat(out()).isZero();
    }

    @Test
    void theManagerSeesWhoIsNotBackInTime() {
        jdbc.sql("""
                        insert into field_days (id, person_id, day, left_at, due_back_at) values (?, ?, ?, ?, ?)""")
                .params(
                        Uuids.next(),
                        ada.value(),
                        LocalDate.now(clock),
                        Timestamp.from(clock.instant().minus(Duration.ofHours(9))),
                        Timestamp.from(clock.instant().minus(Duration.ofHours(1))))
                .update();

        assertThat(text(get("/", Role.MANAGER))).contains("Ada Fell");
        assertThat(post("/my-day/back")).hasStatus3xxRedirection();
        assertThat(text(get("/", Role.MANAGER))).doesNotContain("Ada Fell</");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "soon", "25:00", "00:00", "17:00\0", "\u202E17:00"})
    @DisplayName("SEC-13 a time that is none or past is refused beside its field, and nobody is out")
    void sec13RefusesATimeThatIsNone(String dueBack) {
        MvcTestResult answer = post("/my-day/leave", "dueBack", dueBack);

        assertThat(answer.getResponse().getStatus()).isIn(400, 422);
        assertThat(out()).isZero();
    }

    @Test
    void whatWasLeftToDoGoesOffTheListOnce() {
        SiteId site = sites.named("Tarn block");
        UUID left = followUp(site);

        assertThat(text(get("/sites/" + site + "/sheet", Role.TECHNICIAN))).contains("Bring a new float");
        assertThat(post("/follow-ups/" + left + "/done"))
                .hasStatus3xxRedirection()
                .hasRedirectedUrl("/sites/" + site + "/sheet");
        assertThat(text(get("/sites/" + site + "/sheet", Role.TECHNICIAN))).doesNotContain("Bring a new float");

        jdbc.sql("update follow_ups set done_on = '2026-01-02' where id = ?")
                .param(left)
                .update();
        assertThat(post("/follow-ups/" + left + "/done")).hasStatus3xxRedirection();
        assertThat(jdbc.sql("select done_on from follow_ups where id = ?")
                        .param(left)
                        .query(LocalDate.class)
                        .single())
                .isEqualTo(LocalDate.of(2026, 1, 2));
    }

    @Test
    @DisplayName("SEC-64 what is not there cannot be done")
    void sec64AnswersUnknownAsMissing() {
        assertThat(post("/follow-ups/no-id/done").getResponse().getStatus()).isIn(400, 404);
        assertThat(post("/follow-ups/" + UUID.randomUUID() + "/done")).hasStatus(404);
    }

    private UUID followUp(SiteId site) {
        RecordVisit report =
                Reports.service(site, ada, LocalDate.now(clock).minusDays(3)).build();
        recorder.record(report, ada);
        UUID left = Uuids.next();
        jdbc.sql(
                        "insert into follow_ups (id, report_id, site_id, text, promised) values (?, ?, ?, 'Bring a new float', true)")
                .params(left, report.id().value(), site.value())
                .update();
        return left;
    }

    private int out() {
        return jdbc.sql("select count(*) from field_days where person_id = ? and back_at is null")
                .param(ada.value())
                .query(Integer.class)
                .single();
    }

    private MvcTestResult get(String path, Role role) {
        MvcTestResult answer =
                mvc.get().uri(path).with(user(PageTest.As.who(ada, role))).exchange();
        assertThat(answer).hasStatusOk();
        return answer;
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    /** The page without its head, where the visitor's own name stands. */
    private static String text(MvcTestResult answer) {
        String page = new String(answer.getResponse().getContentAsByteArray(), java.nio.charset.StandardCharsets.UTF_8);
        return page.substring(page.indexOf("<main"));
    }
}
