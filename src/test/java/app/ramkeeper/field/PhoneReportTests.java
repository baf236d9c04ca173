package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.PageTest;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What the office and the customer read of a phone's visit. */
class PhoneReportTests extends FromPhones {

    private static final String LIST = "01900000-0000-7000-8000-0000000f0001";

    @Test
    void commissioningShowsItsInstallRunsTimesAndWhatWasExplained() {
        InstallId install = installs.notYetCommissioned(site);
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "beats evenly");
        visit.put("kind", "COMMISSIONING");
        visit.put("install", install.value());
        visit.put("leftSetting", "3 turns, locked");
        visit.put("startedAt", LocalDate.now(clock) + "T01:10:00Z");
        visit.put("leftAt", LocalDate.now(clock) + "T04:20:00Z");
        visit.put("checklist", LIST);
        List<Map<String, Object>> checks = new ArrayList<>();
        List.of("HEIGHT", "FLUSH", "CHARGE", "OPEN", "LOCK", "TAUGHT")
                .forEach(code -> checks.add(Map.of("code", code, "done", true)));
        checks.add(Map.of("code", "DRAIN", "done", false, "why", "Drain is dug next week"));
        visit.put("checks", checks);
        visit.put("steps", List.of(Map.of("setting", "2 turns", "drive", "40", "delivered", "3.2")));
        Map<String, Object> timed = reading(install, "DELIVERED_FLOW", "4.0", "LITRE_PER_MINUTE");
        // 10 l in 150, 140 and 160 s: 4, 4.2857 and 3.75 l/min; mean 4.01, spread 0.27
        timed.put("runs", Map.of("litres", 10, "seconds", List.of(150, 140, 160)));
        visit.put("readings", List.of(timed));
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();

        assertThat(page("/visits/reports/" + id))
                .hasStatusOk()
                .bodyText()
                .contains("Put to work", "New ram", "3 turns, locked", "Set out", "first configuration")
                .contains("<span>160</span>", "4.01", "0.27", "2 turns")
                .contains("Drain is dug next week", "Not ticked, of list 1")
                .doesNotContain("Every hold point");
    }

    @Test
    void floatShutIsNotComparableWhateverWasReadOfThePump() throws IOException {
        InstallId install = installs.commissioned(site, LocalDate.now(clock).minusYears(1));
        for (int day = 3; day >= 1; day--) {
            Map<String, Object> usual = visit(UUID.randomUUID(), "as usual");
            usual.put("on", LocalDate.now(clock).minusDays(day).toString());
            usual.put("readings", List.of(reading(install, "DELIVERED_FLOW", "4.0", "LITRE_PER_MINUTE")));
            assertThat(send(ada, envelope(ada, usual))).hasStatusOk();
        }
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "tank full");
        Map<String, Object> none = reading(install, "DELIVERED_FLOW", "0", "LITRE_PER_MINUTE");
        none.put("notComparable", "Float shut at the tank");
        visit.put(
                "readings",
                List.of(
                        none,
                        reading(install, "BEAT_RATE", "41", "PER_MINUTE"),
                        reading(install, "DELIVERY_PRESSURE", "7.7", "BAR"),
                        reading(install, "WATER_TEMPERATURE", "9", "CELSIUS")));
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();

        assertThat(jdbc.sql("select quantity from readings where report_id = ? and comparable")
                        .param(id)
                        .query(String.class)
                        .list())
                .containsExactly("WATER_TEMPERATURE");
        String report = page("/visits/reports/" + id).getResponse().getContentAsString();
        assertThat(report.split("not comparable: Float shut at the tank", -1)).hasSize(4);
        assertThat(paper(id).split("not comparable: Float shut at the tank", -1))
                .hasSize(4);
        String history =
                page("/installs/" + install.value() + "/history").getResponse().getContentAsString();
        assertThat(history).contains("not comparable: Float shut at the tank").doesNotContain("-100");
        assertThat(history.split(LocalDate.now(clock) + ": ", -1))
                .as("no point of the plot is of that day")
                .hasSize(1);
    }

    @Test
    void twoInstallsAreToldApart() throws IOException {
        LocalDate since = LocalDate.now(clock).minusYears(1);
        InstallId upper = named(installs.commissioned(site, since), "Upper ram");
        InstallId lower = named(installs.commissioned(site, since), "Lower ram");
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "both looked at");
        visit.put(
                "readings",
                List.of(
                        reading(upper, "BEAT_RATE", "61", "PER_MINUTE"),
                        reading(lower, "BEAT_RATE", "47", "PER_MINUTE")));
        visit.put(
                "findings",
                List.of(
                        finding(upper, "Grit under the valve"),
                        finding(lower, "Washer split"),
                        finding(null, "Ford washed out")));
        visit.put(
                "parts",
                List.of(Map.of("install", lower.value(), "text", "Hemp washer", "quantity", new BigDecimal(1))));
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();

        assertThat(paper(id).replaceAll("\\s+", " "))
                .containsSubsequence(
                        "The whole site",
                        "Ford washed out",
                        "Lower ram",
                        "Washer split",
                        "Hemp washer",
                        "47",
                        "Upper ram",
                        "Grit under the valve",
                        "61");
        assertThat(page("/visits/reports/" + id)
                        .getResponse()
                        .getContentAsString()
                        .replaceAll("<[^>]+>|\\s+", " "))
                .containsPattern("Washer split +Lower ram")
                .containsPattern("Ford washed out +the whole site")
                .containsPattern("Hemp washer +Lower ram");
        assertThat(page("/installs/" + upper.value() + "/history"))
                .bodyText()
                .contains("Grit under the valve", "Ford washed out")
                .doesNotContain("Washer split", "Hemp washer");
    }

    @Test
    void anotherInstallsVisitIsNoneOfThisOne() {
        LocalDate since = LocalDate.now(clock).minusYears(1);
        InstallId upper = installs.commissioned(site, since);
        InstallId lower = installs.commissioned(site, since);
        Map<String, Object> visit = visit(UUID.randomUUID(), "only the lower one was open");
        visit.put("findings", List.of(finding(lower, "Washer split")));
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();

        assertThat(page("/installs/" + lower.value() + "/history")).bodyText().contains("only the lower one");
        assertThat(page("/installs/" + upper.value() + "/history")).bodyText().doesNotContain("only the lower one");
    }

    @Test
    @DisplayName("SYN-22 a phone that knows nothing of runs, whole sites and installs put to work is taken as ever")
    void syn22OlderPhone() {
        InstallId install = installs.commissioned(site, LocalDate.now(clock).minusYears(1));
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "from an older page");
        visit.put("readings", List.of(reading(install, "DELIVERED_FLOW", "4.0", "LITRE_PER_MINUTE")));
        visit.put("findings", List.of(finding(null, "Ford washed out")));
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();
        assertThat(page("/visits/reports/" + id)).hasStatusOk().bodyText().contains("Ford washed out");
    }

    private InstallId named(InstallId install, String name) {
        jdbc.sql("update installs set name = ? where id = ?")
                .params(name, install.value())
                .update();
        return install;
    }

    private static Map<String, Object> finding(@Nullable InstallId install, String cause) {
        Map<String, Object> finding = new HashMap<>();
        finding.put("install", install == null ? null : install.value());
        finding.put("symptom", "LESS_WATER");
        finding.put("cause", cause);
        return finding;
    }

    private static Map<String, Object> reading(InstallId install, String quantity, String value, String unit) {
        Map<String, Object> reading = new HashMap<>();
        reading.put("install", install.value());
        reading.put("quantity", quantity);
        reading.put("place", quantity.equals("DELIVERED_FLOW") ? "TANK" : "PUMP");
        reading.put("value", new BigDecimal(value));
        reading.put("unit", unit);
        reading.put("asRead", true);
        return reading;
    }

    private MvcTestResult page(String path) {
        return mvc.get().uri(path).with(user(PageTest.As.who(ada, Role.OFFICE))).exchange();
    }

    private String paper(UUID id) throws IOException {
        byte[] pdf =
                page("/visits/reports/" + id + "/customer.pdf").getResponse().getContentAsByteArray();
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(paper);
        }
    }
}
