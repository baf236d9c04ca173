package app.ramkeeper.field;

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
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import tools.jackson.databind.json.JsonMapper;

/** From a commissioning done on the phone to baseline, record and customer's page. */
@PageTest
class FieldPapersTests {

    private static final String LIST = "01900000-0000-7000-8000-0000000f0001";
    private static final List<String> HOLDS = List.of("DRAIN", "HEIGHT", "FLUSH", "CHARGE", "OPEN", "LOCK", "TAUGHT");

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JsonMapper json;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    org.springframework.jdbc.core.simple.JdbcClient jdbc;

    @Autowired
    jakarta.persistence.EntityManager entities;

    @Autowired
    Clock clock;

    private SiteId site;
    private InstallId install;
    private PersonId ada;

    @BeforeEach
    void make() {
        site = sites.named("Tarn " + UUID.randomUUID());
        install = installs.notYetCommissioned(site);
        ada = people.named("Ada " + UUID.randomUUID());
    }

    private MvcTestResult send(UUID id, List<Map<String, Object>> checks) {
        Map<String, Object> visit = new HashMap<>();
        visit.put("v", 1);
        visit.put("id", id);
        visit.put("site", site.value());
        visit.put("kind", "COMMISSIONING");
        visit.put("on", LocalDate.now(clock).toString());
        visit.put("outcome", "DONE");
        visit.put("nobodyThere", false);
        visit.put("customerName", "Merindah Foss");
        visit.put("photos", 0);
        visit.put("checklist", LIST);
        visit.put("checks", checks);
        visit.put("steps", tried);
        visit.put("works", List.of(work()));
        visit.put("dryFrom", "2027-01-10");
        visit.put("dryUntil", "2027-04-10");
        visit.put("dryFlow", "57");
        visit.put("leftSetting", "3 turns, locked");
        visit.put(
                "water",
                Map.of(
                        "sample",
                        "W-17",
                        "result",
                        "no E. coli in 100 ml",
                        "results",
                        List.of(Map.of("parameter", "pH", "value", "7.2", "unit", "units")),
                        "isolated",
                        false));
        visit.put(
                "parts",
                List.of(Map.of("install", install.value(), "text", "Waste rubber", "quantity", 1, "batch", "R-2031")));
        visit.put(
                "readings",
                List.of(
                        reading("DRIVE_FLOW", "PUMP", "55"),
                        reading("DELIVERED_FLOW", "TANK", "4.1"),
                        reading("BEAT_RATE", "PUMP", "62", "PER_MINUTE"),
                        reading("PRE_CHARGE", "PUMP", "2.2", "BAR")));
        visit.put("followUps", List.of(Map.of("text", "Bring the spare rubber", "promised", true)));
        String text = json.writeValueAsString(visit);
        return mvc.post()
                .uri("/field/entries")
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .header("Idempotency-Key", id.toString())
                .contentType(MediaType.APPLICATION_JSON)
                .content(json.writeValueAsString(
                        Map.of("id", id, "person", ada.value(), "text", text, "hash", Intake.sha256(text))))
                .exchange();
    }

    private Map<String, Object> work() {
        Map<String, Object> work = new HashMap<>(Map.of("install", install.value(), "outcome", "DONE", "by", "OWNER"));
        work.put(
                "kind",
                jdbc.sql("select id from task_kinds where code = 'CLEAN_STRAINER'")
                        .query(UUID.class)
                        .single());
        if (could != null) {
            work.putAll(Map.of("outcome", "COULD_NOT", "reason", could, "by", "US"));
        }
        return work;
    }

    private Map<String, Object> reading(String quantity, String place, String value) {
        return reading(quantity, place, value, "LITRE_PER_MINUTE");
    }

    private Map<String, Object> reading(String quantity, String place, String value, String unit) {
        return Map.of(
                "install",
                install.value(),
                "quantity",
                quantity,
                "place",
                place,
                "value",
                new java.math.BigDecimal(value),
                "unit",
                unit,
                "asRead",
                true);
    }

    private static List<Map<String, Object>> checks() {
        List<Map<String, Object>> checks = new ArrayList<>();
        HOLDS.forEach(code -> checks.add(
                code.equals("DRAIN")
                        ? Map.of("code", code, "done", false, "why", "Drain is dug next week")
                        : Map.of("code", code, "done", true)));
        return checks;
    }

    private String text(String path) throws IOException {
        byte[] pdf = mvc.get()
                .uri(path)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .exchange()
                .getResponse()
                .getContentAsByteArray();
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(paper);
        }
    }

    @Test
    void holdPointsAreTickedOrExplained() {
        assertThat(send(UUID.randomUUID(), checks().subList(0, 6)))
                .hasStatus(422)
                .bodyJson()
                .extractingPath("$.problems[0].path")
                .isEqualTo("checks.TAUGHT");
    }

    @Test
    void commissioningGivesBaselineRecordAndCustomersPage() throws IOException {
        UUID id = UUID.randomUUID();
        assertThat(send(id, checks())).hasStatusOk();
        assertThat(jdbc.sql("select delivered_flow_si * 60000 from baselines where report_id = :id")
                        .param("id", id)
                        .query(Double.class)
                        .list())
                .singleElement()
                .satisfies(flow -> assertThat(flow).isBetween(4.0999, 4.1001));

        assertThat(text("/visits/reports/" + id + "/commissioning.pdf"))
                .contains("Merindah Foss", "Drain is dug next week", "3 turns", "Dry-month flow: 57", "list 1")
                .contains("setting 3 turns, 4.10 l/min", "10 Jan 2027")
                .contains("setting: 3 turns, locked", "delivered at the settings tried", "flow of the dry month")
                .contains("How to stop it", "Never stop the pump by shutting the delivery");
        assertThat(text("/visits/reports/" + id + "/customer.pdf"))
                .contains("done, by the owner", "Bring the spare rubber", "4.1 l/min", "W-17", "no E. coli in 100 ml")
                .contains("Value Unit", "7.2 units");
        assertThat(mvc.get().uri("/visits/reports/{id}", id).with(user(PageTest.As.who(ada, Role.TECHNICIAN))))
                .bodyText()
                .contains("batch R-2031", "<span>: W-17</span>", "<span>, by the owner</span>");
        assertThat(jdbc.sql("select valve_setting, fall_m from configurations where install_id = :id")
                        .param("id", install.value())
                        .query()
                        .singleRow())
                .containsEntry("valve_setting", "3 turns, locked")
                .extractingByKey("fall_m")
                .isNotNull();
    }

    @Test
    void handOverSheetKeepsFingersOutAndSaysWhomToRing() throws IOException {
        jdbc.sql("update company set name = 'Tarn Rams', phone = '00 555 0177'").update();
        UUID id = UUID.randomUUID();
        assertThat(send(id, checks())).hasStatusOk();
        String path = "/visits/reports/" + id + "/commissioning.pdf";
        String sheet = handOverSheet(path);
        assertThat(sheet).doesNotContain("by hand and let it come up").contains("ring Tarn Rams: 00 555 0177");
        assertThat(sheet.split("rod or a gloved palm", -1))
                .as("at the start and the stop")
                .hasSize(3);
        assertThat(sheet.substring(sheet.indexOf("Never\n"))).contains("Never put fingers into the waste valve");
        jdbc.sql("update company set phone = null").update();
        assertThat(handOverSheet(path)).contains("ring Tarn Rams:").doesNotContain("555");
    }

    @Test
    void recordSaysWhatWasMeasuredAndPromisedAndThatNobodyNamedThePump() throws IOException {
        jdbc.sql("update company set name = 'Tarn Rams', address = '4 Ford Lane', phone = '00 555 0177'")
                .update();
        UUID customer = UUID.randomUUID();
        jdbc.sql("insert into customers (id, name) values (?, 'Merindah Foss & Co')")
                .params(customer)
                .update();
        jdbc.sql("insert into site_parties (id, site_id, part, customer_id) values (?, ?, 'OWNER', ?)")
                .params(UUID.randomUUID(), site.value(), customer)
                .update();
        jdbc.sql("delete from pump_fittings where install_id = ?")
                .param(install.value())
                .update();
        jdbc.sql(
                        "update configurations set vessel_precharge_bar = 2.24, design_delivered_l_min = 4.88, design_drive_flow_l_min = 61 where install_id = ?")
                .param(install.value())
                .update();
        // what was written past it is not in its first look
        entities.flush();
        entities.clear();
        UUID id = UUID.randomUUID();
        assertThat(send(id, checks())).hasStatusOk();

        String record = text("/visits/reports/" + id + "/commissioning.pdf").replaceAll("\\s+", " ");

        assertThat(record)
                .contains("Tarn Rams 4 Ford Lane 00 555 0177", "For Merindah Foss & Co", "Pump not named")
                .contains("Beat measured 62.0 a minute", "Pre-charge measured 2.20 bar, 2.24 bar in the design")
                .contains("Delivered flow measured 4.10 l/min = 5 904 l/day")
                .contains("4.88 l/min with 61.0 l/min of drive water")
                .contains("2 turns 40.0 3.20", "3 turns 55.0 4.10");
    }

    @Test
    void customersPageSaysWhyNotAndThatItWasCorrected() throws IOException {
        UUID id = UUID.randomUUID();
        could = "PARTS";
        assertThat(send(id, checks())).hasStatusOk();
        String path = "/visits/reports/" + id + "/customer.pdf";
        assertThat(text(path).replaceAll("\\s+", " "))
                .contains("Could not be done Clean strainer: part missing")
                .doesNotContain("corrected", "Done Clean strainer");

        UUID newer = UUID.randomUUID();
        jdbc.sql("""
                        insert into visit_reports (id, site_id, kind, supersedes, attended_on, recorded_at, recorded_by, outcome, content_hash, source)
                        select :newer, site_id, kind, id, attended_on, recorded_at, recorded_by, outcome, decode(repeat('ab', 32), 'hex'), source
                        from visit_reports where id = :id""").param("newer", newer).param("id", id).update();
        for (String paper : List.of(path, "/visits/reports/" + id + "/commissioning.pdf")) {
            assertThat(text(paper).replaceAll("\\s+", " "))
                    .contains("This report was corrected and no longer counts. The one in its place was recorded")
                    .contains("by Ada ");
        }
        assertThat(text("/visits/reports/" + newer + "/customer.pdf"))
                .contains("takes the place of an earlier one")
                .doesNotContain("no longer counts");
    }

    private @org.jspecify.annotations.Nullable String could;

    @Test
    void recordOfASettingWithoutItsFlowsHasNoPlot() throws IOException {
        tried = List.of(Map.of("setting", "4 turns"));
        UUID id = UUID.randomUUID();
        assertThat(send(id, checks())).hasStatusOk();
        assertThat(text("/visits/reports/" + id + "/commissioning.pdf"))
                .contains("4 turns", "Hand-over sheet")
                .doesNotContain("delivered at the settings tried");
    }

    private List<Map<String, String>> tried = List.of(
            Map.of("setting", "2 turns", "drive", "40", "delivered", "3,2"),
            Map.of("setting", "3 turns", "drive", "55", "delivered", "4.1"),
            Map.of("setting", "4 turns", "drive", "80", "delivered", "4.9"));

    @Test
    void recordFitsOnAPageOfItsOwn() throws IOException {
        UUID id = UUID.randomUUID();
        assertThat(send(id, checks())).hasStatusOk();
        byte[] pdf = mvc.get()
                .uri("/visits/reports/{id}/commissioning.pdf", id)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .exchange()
                .getResponse()
                .getContentAsByteArray();
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            assertThat(paper.getNumberOfPages()).as("record, hand-over sheet").isEqualTo(2);
        }
    }

    private String handOverSheet(String path) throws IOException {
        String all = text(path).replaceAll(" *\\R", "\n").replaceAll("(?<=[a-z,]) ?\n(?=[a-z])", " ");
        return all.substring(all.indexOf("Hand-over sheet"));
    }

    @Test
    void noCommissioningRecordOfAServiceVisitThatNeverWas() {
        assertThat(mvc.get()
                        .uri("/visits/reports/{id}/customer.pdf", UUID.randomUUID())
                        .with(user(PageTest.As.who(ada, Role.TECHNICIAN))))
                .hasStatus(404);
    }

    @Test
    void visitKeepsTheEditionItWasDoneWith() throws IOException {
        jdbc.sql("""
                        insert into field_checklists (id, kind, edition, created_at, items)
                        values (:id, 'COMMISSIONING', 2, now(), '[{"code":"SHEEP","text":"Wave at the sheep","hold":true}]')""").param("id", UUID.randomUUID()).update();
        assertThat(send(UUID.randomUUID(), List.of(Map.of("code", "SHEEP", "done", true))))
                .hasStatus(422);
        UUID id = UUID.randomUUID();
        assertThat(send(id, checks())).hasStatusOk();
        assertThat(text("/visits/reports/" + id + "/commissioning.pdf"))
                .contains("list 1", "150 mm")
                .doesNotContain("sheep");
    }

    @Test
    void officeSeesWhatArrived() {
        UUID id = UUID.randomUUID();
        send(id, checks());
        assertThat(mvc.get().uri("/phones").with(user(PageTest.As.who(ada, Role.OFFICE))))
                .hasStatusOk()
                .bodyText()
                .contains("/visits/reports/" + id, "in the history");
    }
}
