package app.ramkeeper.visits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** Reports whose site or visit changed while they were under way. */
@PageTest
class MergedSiteReportTests {

    private static final LocalDate DAY = LocalDate.of(2026, 5, 6);

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Catalogue catalogue;

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

    private SiteId duplicate;
    private SiteId kept;
    private InstallId install;
    private PersonId ada;
    private TaskKindId strainer;

    @BeforeEach
    void twoSitesOfOnePlace() {
        duplicate = sites.named("Tarn blck");
        kept = sites.named("Tarn block");
        install = installs.commissioned(duplicate, LocalDate.of(2021, 3, 4));
        ada = people.named("Ada Fell");
        strainer = catalogue.taskKind("CLEAN_STRAINER").orElseThrow().id();
    }

    @Test
    @DisplayName("SYN-12 a report that names a merged site is recorded at the site that was kept, once")
    void placesAReportOnTheKeptSite() {
        RecordVisit report = report().build();
        sites.merge(duplicate, kept);

        assertThat(recorder.record(report, ada)).isEqualTo(new Recorded.Applied(report.id(), false));
        assertThat(recorder.record(report, ada)).isEqualTo(new Recorded.Applied(report.id(), true));

        assertThat(siteOf(report)).isEqualTo(kept.value());
    }

    @Test
    @DisplayName("SYN-12 a report that arrived before the merge can be corrected after it")
    void correctsAReportOfBeforeTheMerge() {
        RecordVisit report = report().build();
        recorder.record(report, ada);
        sites.merge(duplicate, kept);
        RecordVisit fromTheOldPage = report().corrects(report.id()).build();

        assertThat(recorder.record(fromTheOldPage, ada)).isInstanceOf(Recorded.Applied.class);

        assertThat(jdbc.sql("select id from current_reports where site_id in (?, ?)")
                        .param(duplicate.value())
                        .param(kept.value())
                        .query(UUID.class)
                        .list())
                .isEqualTo(List.of(fromTheOldPage.id().value()));
    }

    @Test
    @DisplayName("SYN-12 a report held before a merge is settled on the site that was kept")
    void settlesAHeldReportOnTheKeptSite() {
        RecordVisit report =
                report().visit(visit("CANCELLED")).note("Strainer cleared").build();
        recorder.record(report, ada);
        sites.merge(duplicate, kept);

        assertThat(post("/to-settle/" + held(report) + "/extra", Map.of())).hasStatus(302);

        assertThat(siteOf(report)).isEqualTo(kept.value());
    }

    @Test
    @DisplayName("SYN-12 the office sees the whole text of work for a cancelled visit and records it as one of its own")
    void recordsAsAVisitOfItsOwn() {
        VisitId visit = visit("CANCELLED");
        RecordVisit report = report().visit(visit).note("Strainer cleared").build();
        assertThat(recorder.record(report, ada)).isInstanceOf(Recorded.Held.class);
        UUID held = held(report);

        assertThat(text(get("/to-settle"))).contains("/to-settle/" + held, "Tarn blck");
        assertThat(text(get("/to-settle/" + held))).contains("Strainer cleared", "Clean strainer", "Ada Fell");
        assertThat(recorded(report)).isZero();
        assertThat(post("/to-settle/" + held + "/extra", Map.of())).hasStatus(302);
        assertThat(recorded(report)).isEqualTo(1);
        assertThat(post("/to-settle/" + held + "/extra", Map.of())).hasStatus(409);
    }

    @Test
    @DisplayName("SYN-12 the second report of a visit replaces the first when the office says so")
    void replacesTheReportInForce() {
        VisitId visit = visit("PLANNED");
        RecordVisit first = report().visit(visit).build();
        RecordVisit second = report().visit(visit).note("The one that counts").build();
        recorder.record(first, ada);
        assertThat(recorder.record(second, ada)).isInstanceOf(Recorded.Held.class);

        assertThat(post("/to-settle/" + held(second) + "/supersede", Map.of())).hasStatus(302);

        assertThat(jdbc.sql("select id from current_reports where visit_id = ?")
                        .param(visit.value())
                        .query(UUID.class)
                        .list())
                .isEqualTo(List.of(second.id().value()));
    }

    @Test
    @DisplayName("SYN-12 a dismissed report keeps its text and needs a reason")
    void dismissesWithAReasonOnly() {
        RecordVisit report =
                report().visit(visit("CANCELLED")).note("Came twice").build();
        recorder.record(report, ada);
        UUID held = held(report);

        assertThat(post("/to-settle/" + held + "/dismiss", Map.of("note", " "))).hasStatus(422);
        assertThat(post("/to-settle/" + held + "/dismiss", Map.of("note", "Rung up: the same visit")))
                .hasStatus(302);

        assertThat(text(get("/to-settle/" + held))).contains("Came twice", "Rung up: the same visit");
        assertThat(recorded(report)).isZero();
    }

    @Test
    void answersTheSameReportAsAppliedOnceItIsSettled() {
        RecordVisit report = report().visit(visit("CANCELLED")).build();
        SecurityContext signedIn = SecurityContextHolder.getContext();
        recorder.record(report, ada);
        post("/to-settle/" + held(report) + "/extra", Map.of());
        SecurityContextHolder.setContext(signedIn);

        assertThat(recorder.record(report, ada)).isEqualTo(new Recorded.Applied(report.id(), true));
    }

    private Reports report() {
        return Reports.service(duplicate, ada, DAY).done(install, strainer);
    }

    private VisitId visit(String state) {
        VisitId id = new VisitId(Uuids.next());
        jdbc.sql("""
                        insert into visits (id, site_id, kind, planned_on, minutes, answer, office_must_ring, state, cancelled_reason, version)
                        values (:id, :site, 'SERVICE', '2026-05-06', 60, 'NONE', false, :state, case when :state = 'CANCELLED' then 'snow' end, 0)""")
                .param("id", id.value())
                .param("site", duplicate.value())
                .param("state", state)
                .update();
        return id;
    }

    private UUID held(RecordVisit report) {
        return jdbc.sql("select id from to_settle where report_id = ?")
                .param(report.id().value())
                .query(UUID.class)
                .single();
    }

    private UUID siteOf(RecordVisit report) {
        return jdbc.sql("select site_id from visit_reports where id = ?")
                .param(report.id().value())
                .query(UUID.class)
                .single();
    }

    private long recorded(RecordVisit report) {
        return jdbc.sql("select count(*) from visit_reports where id = ?")
                .param(report.id().value())
                .query(Long.class)
                .single();
    }

    private MvcTestResult get(String path) {
        return mvc.get().uri(path).with(user(PageTest.As.who(ada, Role.OFFICE))).exchange();
    }

    private MvcTestResult post(String path, Map<String, String> fields) {
        var request = mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(ada, Role.OFFICE)))
                .with(csrf());
        fields.forEach(request::param);
        return request.exchange();
    }

    private static String text(MvcTestResult answer) {
        assertThat(answer).hasStatusOk();
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }
}
