package app.ramkeeper.visits.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitRecorder;
import app.ramkeeper.visits.files.Photos;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.UUID;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** A report that is opened for correction and saved as it is says the same again. */
@PageTest
class CorrectionPagesTests {

    private static final LocalDate DAY = LocalDate.of(2026, 5, 6);

    @Autowired
    MockMvcTester mvc;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    VisitHistory history;

    @Autowired
    Photos photos;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    private SiteId site;
    private InstallId install;
    private PersonId ada;
    private PersonId jonty;

    @BeforeEach
    void aSite() {
        site = sites.named("Tarn block");
        install = installs.commissioned(site, LocalDate.of(2021, 3, 4));
        ada = people.named("Ada Fell");
        jonty = people.named("Jonty Brack");
    }

    @Test
    void keepsEveryReadingOfTheSameQuantityAndPlace() {
        RecordVisit report = plain().reading(
                        install, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.2", Unit.LITRE_PER_MINUTE)
                .reading(install, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.4", Unit.LITRE_PER_MINUTE)
                .reading(install, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.3", Unit.LITRE_PER_MINUTE)
                .reading(install, Quantity.DRIVE_FLOW, MeasuredAt.SOURCE, "61", Unit.LITRE_PER_MINUTE)
                .build();

        ReportView corrected = correctedAsItStands(report);

        assertThat(corrected.readings())
                .extracting(
                        ReportView.Reading::quantity,
                        ReportView.Reading::place,
                        r -> r.value().toPlainString())
                .containsExactlyInAnyOrder(
                        tuple(Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.2"),
                        tuple(Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.4"),
                        tuple(Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.3"),
                        tuple(Quantity.DRIVE_FLOW, MeasuredAt.SOURCE, "61"));
    }

    @Test
    void keepsEverybodyWhoWasThere() {
        PersonId marta = people.named("Marta Holm");
        PersonId olek = people.named("Olek Rand");
        jdbc.sql("update people set left_on = '2026-06-01' where id = ?")
                .param(olek.value())
                .update();
        RecordVisit report = plain().people(ada, jonty, marta, olek).build();

        ReportView corrected = correctedAsItStands(report);

        assertThat(jdbc.sql("select person_id from report_people where report_id = ?")
                        .param(corrected.id().value())
                        .query(UUID.class)
                        .list())
                .containsExactlyInAnyOrder(ada.value(), jonty.value(), marta.value(), olek.value());
        assertThat(jdbc.sql("select person_id from report_people where report_id = ? and lead")
                        .param(corrected.id().value())
                        .query(UUID.class)
                        .single())
                .isEqualTo(ada.value());
    }

    @Test
    void leavesAFindingOfTheWholeSiteWithoutAnInstall() {
        RecordVisit report = plain().finding(new RecordVisit.Finding(null, Symptom.OTHER, "track washed out", null))
                .finding(new RecordVisit.Finding(install, Symptom.LEAK_PUMP, null, "new seal"))
                .build();

        ReportView corrected = correctedAsItStands(report);

        assertThat(corrected.findings())
                .extracting(ReportView.Finding::symptom, ReportView.Finding::install)
                .containsExactlyInAnyOrder(tuple(Symptom.OTHER, null), tuple(Symptom.LEAK_PUMP, install));
    }

    @Test
    void asksForNoInstallOfAFindingWhereThereAreSeveral() {
        installs.commissioned(site, LocalDate.of(2022, 3, 4));
        RecordVisit report = plain().finding(new RecordVisit.Finding(null, Symptom.OTHER, "gate off its hinge", null))
                .build();

        assertThat(correctedAsItStands(report).findings())
                .singleElement()
                .satisfies(finding -> assertThat(finding.install()).isNull());
    }

    @Test
    void keepsEveryRowOfALongReport() {
        Reports report = plain();
        for (int i = 0; i < 35; i++) {
            report.finding(new RecordVisit.Finding(install, Symptom.OTHER, "Point " + i, null));
        }

        assertThat(correctedAsItStands(report.build()).findings()).hasSize(35);
    }

    @Test
    void showsPhotosOfTheReportToWhoeverCorrectsIt() throws IOException {
        String sha = photo();
        RecordVisit report =
                plain().photo(new RecordVisit.Photo(sha, "Gate", null)).build();
        recorder.record(report, ada);

        String page = text(form(report.id()));

        assertThat(page).contains("/visits/uploads/" + sha);
        assertThat(upload(sha, jonty)).hasStatusOk();
    }

    @Test
    void correctsAReportOfASiteThatWasSplitSince() {
        InstallId upper = installs.commissioned(site, LocalDate.of(2022, 3, 4));
        RecordVisit report = plain().reading(
                        install, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.2", Unit.LITRE_PER_MINUTE)
                .reading(upper, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "3.1", Unit.LITRE_PER_MINUTE)
                .finding(new RecordVisit.Finding(upper, Symptom.LEAK_PUMP, null, "new seal"))
                .build();
        recorder.record(report, ada);
        sites.split(site, "Tarn block, upper part", DAY.plusDays(1), upper);

        ReportView corrected = correctedAsItStands(report);

        assertThat(corrected.site()).isEqualTo(site);
        assertThat(corrected.readings())
                .extracting(ReportView.Reading::install, r -> r.value().toPlainString())
                .containsExactlyInAnyOrder(tuple(install, "4.2"), tuple(upper, "3.1"));
        assertThat(corrected.findings()).extracting(ReportView.Finding::install).containsExactly(upper);
    }

    @Test
    void aReportOfASplitSiteStillSpeaksOfNoOtherInstall() {
        InstallId foreign = installs.commissioned(LocalDate.of(2021, 3, 4));
        RecordVisit report = plain().build();
        recorder.record(report, ada);
        RecordVisit slip = plain().corrects(report.id())
                .reading(foreign, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.2", Unit.LITRE_PER_MINUTE)
                .build();

        assertThatExceptionOfType(ReportRefused.class)
                .isThrownBy(() -> recorder.record(slip, ada))
                .withMessageContaining("stands at another site");
    }

    @Test
    @DisplayName("SEC-41 a photo that no report holds yet is served to who brought it only")
    void keepsAPhotoOfNoReportToItsOwner() throws IOException {
        String sha = photo();

        assertThat(upload(sha, ada)).hasStatusOk();
        assertThat(upload(sha, jonty)).hasStatus(404);
        assertThat(upload("../" + sha, ada).getResponse().getStatus()).isIn(400, 404);
    }

    private Reports plain() {
        return Reports.service(site, ada, DAY);
    }

    private String photo() throws IOException {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        BufferedImage picture = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
        picture.setRGB(3, 3, UUID.randomUUID().hashCode() & 0xFFFFFF);
        ImageIO.write(picture, "png", png);
        return photos.keep(png.toByteArray(), "gate.png", "image/png", ada).sha256();
    }

    private MvcTestResult upload(String sha, PersonId by) {
        return mvc.get()
                .uri("/visits/uploads/{sha}", sha)
                .with(user(PageTest.As.who(by, Role.TECHNICIAN)))
                .exchange();
    }

    private MvcTestResult form(ReportId report) {
        var page = mvc.get()
                .uri("/visits/reports/{id}/correct", report.value())
                .with(user(PageTest.As.who(jonty, Role.TECHNICIAN)))
                .exchange();
        assertThat(page).hasStatusOk();
        return page;
    }

    /** Records it, opens it for correction and sends the form back as a browser would, untouched. */
    private ReportView correctedAsItStands(RecordVisit report) {
        SecurityContext signedIn = SecurityContextHolder.getContext();
        recorder.record(report, ada);
        String page = text(form(report.id()));
        var request = mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(jonty, Role.TECHNICIAN)))
                .with(csrf());
        PostedForm.fields(page).forEach(field -> request.param(field.getKey(), field.getValue()));
        var answer = request.exchange();
        assertThat(answer).as(() -> text(answer)).hasStatus(302);
        String location = String.valueOf(answer.getResponse().getRedirectedUrl());
        assertThat(location).matches(Pattern.compile(".*/visits/reports/[0-9a-f-]{36}"));
        ReportId corrected = new ReportId(UUID.fromString(location.substring(location.length() - 36)));
        assertThat(corrected).isNotEqualTo(report.id());
        SecurityContextHolder.setContext(signedIn);
        return history.report(corrected).orElseThrow();
    }

    private static String text(MvcTestResult answer) {
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }
}
