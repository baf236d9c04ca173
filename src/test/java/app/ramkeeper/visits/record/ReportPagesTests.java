package app.ramkeeper.visits.record;

import static org.assertj.core.api.Assertions.assertThat;
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
import app.ramkeeper.shared.Measured;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitRecorder;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.transaction.annotation.Transactional;

@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
@WithMockUser(roles = "TECHNICIAN")
class ReportPagesTests {

    private static final LocalDate DAY = LocalDate.of(2026, 5, 6);

    @Autowired
    MockMvcTester mvc;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Test
    void showsWhatWasMeasuredAndFound() {
        SiteId site = sites.named("Tarn block");
        InstallId install = installs.commissioned(site, LocalDate.of(2021, 3, 4));
        PersonId tech = people.named("Ada Fell");
        RecordVisit report = Reports.service(site, tech, DAY)
                .reading(install, Quantity.BEAT_RATE, MeasuredAt.PUMP, "61", Unit.PER_MINUTE)
                .reading(new RecordVisit.Reading(
                        install,
                        null,
                        Quantity.DELIVERED_FLOW,
                        MeasuredAt.TANK,
                        Measured.of("40", Unit.LITRE_PER_MINUTE),
                        new RecordVisit.Bucket(new BigDecimal("20"), new BigDecimal("30")),
                        null,
                        false,
                        null))
                .finding(new RecordVisit.Finding(install, Symptom.LEAK_PUMP, "<script>", "new seal"))
                .build();
        recorder.record(report, tech);

        assertThat(mvc.get().uri("/visits/reports/{id}", report.id().value()).with(user(technician())))
                .hasStatusOk()
                .bodyText()
                .contains(
                        "Tarn block",
                        "Ada Fell",
                        "61 /min",
                        "40 l/min",
                        "20 l in 30 s",
                        "Leak at the pump",
                        "&lt;script&gt;");
    }

    @Test
    void sec64AnswersAnUnknownReportAsMissing() {
        assertThat(mvc.get().uri("/visits/reports/{id}", UUID.randomUUID()).with(user(technician())))
                .hasStatus(404);
    }

    private static CurrentUser technician() {
        return new CurrentUser(UUID.randomUUID(), UUID.randomUUID(), "ada", "Ada Fell", Set.of(Role.TECHNICIAN), null);
    }
}
