package app.ramkeeper.visits.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.WorkOutcome;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MockMvcTester.MockMvcRequestBuilder;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@PageTest
class RecordPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    VisitHistory history;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    Clock clock;

    private SiteId site;
    private InstallId install;
    private PersonId tech;
    private final UUID id = UUID.randomUUID();

    @BeforeEach
    void register() {
        site = sites.named("Tarn block");
        install = installs.commissioned(site, LocalDate.of(2021, 3, 4));
        tech = people.named("Ada Fell");
    }

    @Test
    void asksForReadingsWithTheReportsIdInTheForm() {
        assertThat(mvc.get().uri("/sites/{id}/record", site.value()).with(user(PageTest.As.who(tech, Role.TECHNICIAN))))
                .hasStatusOk()
                .bodyText()
                .contains("Tarn block", field("DRIVE_FLOW.PUMP.litres"), "name=\"id\" value=\"")
                .contains("Clean strainer", "Change delivery valve rubber", "Before you leave");
    }

    @Test
    void recordsAllAsUsualWithTwoReadings() {
        List<Map.Entry<String, String>> asShown = PostedForm.fields(new String(
                mvc.get()
                        .uri("/sites/{id}/record", site.value())
                        .with(user(PageTest.As.who(tech, Role.TECHNICIAN)))
                        .exchange()
                        .getResponse()
                        .getContentAsByteArray(),
                StandardCharsets.UTF_8));
        MockMvcRequestBuilder filled = post().param("asUsual", "true")
                .param(field("DRIVE_FLOW.PUMP.value"), "58")
                .param(field("DELIVERED_FLOW.TANK.value"), "3,9");
        asShown.stream()
                .filter(f -> f.getKey().startsWith("task"))
                .forEach(f -> filled.param(f.getKey(), f.getKey().endsWith(".part") ? "UNKNOWN" : f.getValue()));

        assertThat(filled).hasStatus3xxRedirection();
        assertThat(saved().readings())
                .filteredOn(r -> r.quantity() == Quantity.DELIVERED_FLOW)
                .singleElement()
                .satisfies(r -> assertThat(r.value()).isEqualByComparingTo("3.9"));
        assertThat(saved().works()).isNotEmpty().allMatch(w -> w.outcome() == WorkOutcome.DONE);
    }

    @Test
    void flt29RefusesNul() {
        assertThat(post().param("note", "a\u0000b")).hasStatus(422).bodyText().contains("control character");
    }

    @Test
    void sec13RefusesADayInTheFuture() {
        assertThat(post(LocalDate.now(clock).plusDays(3))).hasStatus(422);
    }

    @Test
    void worksOutBucketAndWatch() {
        assertThat(post().param(field("DELIVERED_FLOW.TANK.litres"), "2")
                        .param(field("DELIVERED_FLOW.TANK.seconds"), "30"))
                .hasStatus3xxRedirection();
        assertThat(saved().readings()).singleElement().satisfies(r -> {
            assertThat(r.value()).isEqualByComparingTo("4");
            assertThat(r.unitSymbol()).isEqualTo("l/min");
        });
    }

    @Test
    void syn23MakesOneReportOfADoubleSubmit() {
        for (int i = 0; i < 2; i++) {
            assertThat(post().param("note", "Once"))
                    .hasStatus3xxRedirection()
                    .hasRedirectedUrl("/visits/reports/" + id);
        }
        saved();
        assertThat(history.ofSite(site, null).rows()).hasSize(1);
    }

    @Test
    void asksAboutAnImplausibleValueAndBelievesTheAnswer() {
        assertThat(post().param(field("BEAT_RATE.PUMP.value"), "300").param("note", "Gate stiff"))
                .hasStatus(422)
                .bodyText()
                .contains("Gate stiff", "value=\"300\"", "beats some 40 to 90", field("BEAT_RATE.PUMP.asRead"));
        assertThat(post().param(field("BEAT_RATE.PUMP.value"), "300").param(field("BEAT_RATE.PUMP.asRead"), "true"))
                .hasStatus3xxRedirection();
        assertThat(saved().readings())
                .singleElement()
                .satisfies(r -> assertThat(r.asRead()).isTrue());
    }

    @Test
    void refusesAnImpossibleValueAtOnceWithoutAWayThrough() {
        assertThat(post().param(field("DRIVE_FLOW.PUMP.value"), "-5").param(field("BEAT_RATE.PUMP.value"), "900"))
                .hasStatus(422)
                .bodyText()
                .contains("Give a value from 0 to 100000 l/min", "Give a value from 0 to 600 /min")
                .doesNotContain("asRead");
    }

    @Test
    void asksOnceAboutADoneVisitThatSaysNothingOrThatATaskCouldNotBe() {
        assertThat(post()).hasStatus(422).bodyText().contains("Nothing is put down", "name=\"meantSo\"");
        MockMvcRequestBuilder could = post().param("extras", "1")
                .param("extra[0].kind", "01900000-0000-7000-8000-000000000001")
                .param("extra[0].outcome", "COULD_NOT")
                .param("extra[0].reason", "OTHER");
        assertThat(could).hasStatus(422).bodyText().contains("A task could not be done");
        assertThat(post().param("meantSo", "true")).hasStatus3xxRedirection();
    }

    @Test
    void namesAllThatIsWrongInOneRound() {
        assertThat(post("COULD_NOT")
                        .param(field("DRIVE_FLOW.PUMP.value"), "abc")
                        .param(field("BEAT_RATE.PUMP.value"), "300")
                        .param(field("DELIVERY_PRESSURE.PUMP.value"), "-1")
                        .param("arrivedAt", "11:00")
                        .param("leftAt", "10:00")
                        .param("parts", "1")
                        .param("part[0].text", "Hose")
                        .param("part[0].quantity", "-2"))
                .hasStatus(422)
                .bodyText()
                .contains(
                        "Give a number, for example 4.2.",
                        "beats some 40 to 90",
                        "Give a value from 0 to 100 bar",
                        "You left before you arrived.",
                        "Say why the visit could not be done.",
                        "Give a quantity above 0");
    }

    @Test
    void asksForTheFloatWhenNothingArrivesThoughThePumpBeats() {
        assertThat(beatsWithoutWater()).hasStatus(422).bodyText().contains("Dead head", "float." + install.value());
        assertThat(beatsWithoutWater().param("float." + install.value(), "SHUT"))
                .hasStatus3xxRedirection();
        assertThat(saved().readings())
                .filteredOn(r -> r.value().signum() == 0)
                .singleElement()
                .satisfies(r -> assertThat(r.comparable()).isFalse());
    }

    @Test
    void sec13KeepsWhatWasTypedBesideEachError() {
        assertThat(post().param("leftAt", "noon").param("arrivedAt", "10:00").param("note", "<b>&"))
                .hasStatus(422)
                .bodyText()
                .contains("value=\"noon\"", "hours:minutes", "&lt;b&gt;&amp;");
    }

    @Test
    void couldNotNeedsAReason() {
        assertThat(post("COULD_NOT")).hasStatus(422).bodyText().contains("Say why the visit could not be done.");
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void sec64AnswersUnknownVisitsAndSitesAsMissing() {
        assertThat(mvc.get()
                        .uri("/visits/{id}/record", UUID.randomUUID())
                        .with(user(PageTest.As.who(tech, Role.TECHNICIAN))))
                .hasStatus(404);
        assertThat(mvc.get()
                        .uri("/sites/{id}/record", UUID.randomUUID())
                        .with(user(PageTest.As.who(tech, Role.TECHNICIAN))))
                .hasStatus(404);
    }

    @Test
    void sec13RefusesAnAdministrator() {
        assertThat(mvc.get()
                        .uri("/sites/{id}/record", site.value())
                        .with(user(PageTest.As.who(tech, Role.ADMINISTRATOR))))
                .hasStatus(403);
    }

    @Test
    void correctionTakesThePlaceOfTheReport() {
        assertThat(post().param("note", "Frist")).hasStatus3xxRedirection();
        assertThat(mvc.get().uri("/visits/reports/{id}/correct", id).with(user(PageTest.As.who(tech, Role.TECHNICIAN))))
                .hasStatusOk()
                .bodyText()
                .contains("Frist", "name=\"supersedes\" value=\"" + id);
        UUID newer = UUID.randomUUID();
        assertThat(post(newer, "DONE").param("supersedes", id.toString()).param("note", "First"))
                .hasStatus3xxRedirection();
        assertThat(saved().supersededBy()).isEqualTo(new ReportId(newer));
    }

    private MockMvcRequestBuilder beatsWithoutWater() {
        return post().param(field("BEAT_RATE.PUMP.value"), "60").param(field("DELIVERED_FLOW.PUMP.value"), "0");
    }

    private MockMvcRequestBuilder post() {
        return post("DONE");
    }

    private MockMvcRequestBuilder post(String outcome) {
        return post(id, outcome);
    }

    private MockMvcRequestBuilder post(LocalDate day) {
        return post(id, "DONE", day);
    }

    private MockMvcRequestBuilder post(UUID report, String outcome) {
        return post(report, outcome, LocalDate.of(2026, 5, 6));
    }

    private MockMvcRequestBuilder post(UUID report, String outcome, LocalDate day) {
        return mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(tech, Role.TECHNICIAN)))
                .with(csrf())
                .param("id", report.toString())
                .param("attendedOn", day.toString())
                .param("kind", "SERVICE")
                .param("outcome", outcome)
                .param("lead", tech.value().toString());
    }

    private String field(String rest) {
        return "reading." + install.value() + "." + rest;
    }

    private ReportView saved() {
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("mother", "", "ROLE_OFFICE"));
        return history.report(new ReportId(id)).orElseThrow();
    }
}
