package app.ramkeeper.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Measured;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.VisitRecorder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
@WithMockUser(roles = {"TECHNICIAN", "OFFICE"})
class SiteSheetTests {

    private static final LocalDate START = LocalDate.of(2022, 3, 4);

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Catalogue catalogue;

    @Autowired
    Fleet fleet;

    private SiteId site;
    private InstallId install;

    private void aSiteWithTwoVisits() {
        site = sites.ownedBy("Ada Rimmer", "Upper Longslip");
        install = installs.commissioned(site, START);
        PersonId mere = people.named("Mere Harding");
        visit(mere, START.plusYears(1), "3.9", "Strainer clear, gate code by phone only");
        visit(mere, START.plusYears(2), "3.4", "Beat even");
    }

    private void visit(PersonId who, LocalDate on, String delivered, String note) {
        recorder.record(
                Reports.service(site, who, on)
                        .done(
                                install,
                                catalogue
                                        .taskKind("CLEAN_STRAINER")
                                        .orElseThrow()
                                        .id())
                        .reading(install, Quantity.DELIVERED_FLOW, MeasuredAt.PUMP, delivered, Unit.LITRE_PER_MINUTE)
                        .reading(install, Quantity.DRIVE_FLOW, MeasuredAt.PUMP, "60", Unit.LITRE_PER_MINUTE)
                        .note(note)
                        .build(),
                who);
    }

    @Test
    void tellsTheStoryBeforeTheDrive() {
        aSiteWithTwoVisits();

        String page = get("/sites/" + site + "/sheet");

        assertThat(page)
                .contains("Upper Longslip", "Ada Rimmer", "gate code by phone only", "Mere Harding", "Strainer")
                // 3.4 against the 4.0 l/min of the baseline
                .contains("−15 %");
    }

    @Test
    void showsTheBaselineBeforeAnythingWasReadAndLeadsToAVisitThatNobodyPlanned() {
        SiteId fresh = sites.named("Fresh block");
        installs.commissioned(fresh, START);

        assertThat(get("/sites/" + fresh.value() + "/sheet"))
                .contains(
                        "No readings yet.",
                        "Baseline of Fri 4 Mar 2022:",
                        "Drive flow 60.0 l/min.",
                        "Beat rate 62.0 /min.")
                .contains("/sites/" + fresh.value() + "/record");
    }

    @Test
    void showsTheLastReadingOnceWhetherOrNotItsPumpWasNamed() {
        aSiteWithTwoVisits();
        PersonId mere = people.named("Mere Harding");
        PumpId pump = fleet.install(install).pumps().get(0).id();
        recorder.record(
                Reports.service(site, mere, START.plusYears(3))
                        .reading(new RecordVisit.Reading(
                                install,
                                pump,
                                Quantity.DRIVE_FLOW,
                                MeasuredAt.PUMP,
                                Measured.of("57", Unit.LITRE_PER_MINUTE),
                                null,
                                null,
                                false,
                                null))
                        .build(),
                mere);

        String page = get("/sites/" + site + "/sheet");

        assertThat(page).contains("57 l/min").doesNotContain("60 l/min</td>");
        assertThat(page.split(">Drive flow", -1)).hasSize(2);
    }

    @Test
    void drawsFlowAgainstTheBaseline() {
        aSiteWithTwoVisits();

        String page = get("/installs/" + install + "/history");

        assertThat(page)
                .contains("class=\"series\"", "class=\"baseline\"", "3.40 l/min", "3.90 l/min", "−15 %", "Beat even")
                // 3.4 x 38 / (60 x 4.2), D'Aubuisson
                .contains("51 %");
    }

    @Test
    @DisplayName("SEC-65 a technician's pages hold no private notes and no prices")
    void keepsPrivateThingsAway() {
        aSiteWithTwoVisits();

        assertThat(get("/sites/" + site + "/sheet")).doesNotContainIgnoringCase("private", "price");
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void knowsNoOtherSite() {
        assertThat(mvc.get().uri("/sites/" + UUID.randomUUID() + "/sheet").with(user(technician())))
                .hasStatus(404);
        assertThat(mvc.get().uri("/installs/" + UUID.randomUUID() + "/history").with(user(technician())))
                .hasStatus(404);
    }

    @Test
    @DisplayName("SEC-04 a broken cursor shows the first page")
    void readsBrokenCursors() {
        aSiteWithTwoVisits();

        assertThat(get("/installs/" + install + "/history?after=%27%20or%201=1"))
                .contains("Beat even");
        assertThat(get("/sites/" + site + "/sheet?after=%27%20or%201=1")).contains("Beat even");
    }

    private String get(String uri) {
        var answer = mvc.get().uri(uri).with(user(technician())).exchange();
        assertThat(answer).hasStatusOk();
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private static CurrentUser technician() {
        return new CurrentUser(Uuids.next(), Uuids.next(), "mere", "Mere Harding", Set.of(Role.TECHNICIAN), null);
    }
}
