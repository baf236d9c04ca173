package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.record.PostedForm;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** Water samples and hygiene from the phone to the customer's page, with results that come later. */
class WaterTests extends FromPhones {

    private static final Map<String, Object> SAMPLE = Map.of(
            "sample",
            "W-17",
            "where",
            "Kitchen tap",
            "laboratory",
            "Valley laboratory",
            "takenTime",
            "10:40",
            "next",
            "2031-05-03",
            "product",
            "hypochlorite",
            "isolated",
            true,
            "cleaned",
            "detergent",
            "results",
            List.of(Map.of("parameter", "E. coli", "value", "< 1", "unit", "per 100 ml")));

    private UUID sent(Map<String, Object> water) {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "As usual");
        visit.put("water", water);
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();
        return id;
    }

    private String page(String path) {
        MvcTestResult result = mvc.get()
                .uri(path)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .exchange();
        assertThat(result).hasStatusOk();
        return new String(result.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private MvcTestResult post(String path, Map<String, String> form) {
        var request = mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(ada, Role.OFFICE)))
                .with(csrf());
        form.forEach(request::param);
        return request.exchange();
    }

    private UUID sampleOf(UUID report) {
        return jdbc.sql("select id from water_samples where report_id = :id")
                .param("id", report)
                .query(UUID.class)
                .single();
    }

    private String paper(UUID report) throws IOException {
        byte[] pdf = mvc.get()
                .uri("/visits/reports/{id}/customer.pdf", report)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .exchange()
                .getResponse()
                .getContentAsByteArray();
        try (var document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    @Test
    void aCorrectedReportKeepsItsWaterAndShowsItEverywhere() throws IOException {
        UUID first = sent(SAMPLE);
        assertThat(page("/visits/reports/" + first))
                .contains("W-17", " 10:40<", ">, Ada ", "&lt; 1", "per 100 ml", "hypochlorite");

        var request = mvc.post()
                .uri("/sites/{id}/record", site.value())
                .with(user(PageTest.As.who(ada, Role.OFFICE)))
                .with(csrf());
        PostedForm.fields(page("/visits/reports/" + first + "/correct"))
                .forEach(field -> request.param(
                        field.getKey(), field.getKey().equals("note") ? "Gate left open" : field.getValue()));
        MvcTestResult corrected = request.exchange();
        assertThat(corrected).hasStatus3xxRedirection();
        UUID second = jdbc.sql("select id from visit_reports where supersedes = :id")
                .param("id", first)
                .query(UUID.class)
                .single();

        assertThat(page("/visits/reports/" + second))
                .contains("Gate left open", "W-17", "Kitchen tap", "&lt; 1", "hypochlorite", "detergent");
        assertThat(page("/sites/" + site + "/sheet")).contains("W-17", "E. coli", "Valley laboratory");
        assertThat(page("/field/bundle"))
                .containsPattern("\"reference\"\\s*:\\s*\"W-17\"")
                .containsPattern("\"value\"\\s*:\\s*\"< 1\"");
        assertThat(paper(second)).contains("W-17", "Kitchen tap", "E. coli", "< 1", "per 100 ml", "3 May 2031");
    }

    @Test
    void resultsThatComeLaterAreAddedAndALostUpdateShowsBoth() throws IOException {
        UUID report = sent(Map.of("sample", "W-18", "isolated", false));
        assertThat(page("/visits/reports/" + report)).contains("No results yet");
        String path = "/water-samples/" + sampleOf(report);
        assertThat(page(path)).contains("W-18");

        assertThat(post(path, Map.of("version", "0", "reference", "W-18", "results", "Nitrate; ; mg/l")))
                .hasStatus(422)
                .bodyText()
                .contains("lacks one", "Nitrate; ; mg/l");
        assertThat(post(
                        path,
                        Map.of(
                                "version",
                                "0",
                                "reference",
                                "W-18",
                                "results",
                                "Nitrate; 4.2; mg/l\n\npH; 7.1",
                                "nextOn",
                                "2031-02-01")))
                .hasStatus3xxRedirection();
        assertThat(post(path, Map.of("version", "0", "reference", "W-18", "results", "Nitrate; 44; mg/l")))
                .hasStatus(409)
                .bodyText()
                .contains("Nitrate; 44; mg/l", "Nitrate; 4.2; mg/l");
        assertThat(paper(report)).contains("Nitrate", "4.2", "mg/l", "pH", "7.1");
        assertThat(jdbc.sql("select text || ' ' || due_on from follow_ups where report_id = :id")
                        .param("id", report)
                        .query(String.class)
                        .list())
                .containsExactly("Take the next water sample 2031-02-01");
        assertThat(post(path, Map.of("version", "1", "reference", "W-18", "nextOn", "2031-03-01")))
                .hasStatus3xxRedirection();
        assertThat(jdbc.sql("select due_on::text from follow_ups where report_id = :id")
                        .param("id", report)
                        .query(String.class)
                        .list())
                .containsExactly("2031-03-01");
        assertThat(jdbc.sql(
                                "select count(*) from audit_entries where table_name = 'water_results' and (coalesce(old_values, new_values) ->> 'parameter') = 'Nitrate' and operation = 'delete'")
                        .query(Long.class)
                        .single())
                .isPositive();
    }

    @Test
    void theDeskAddsSampleAndDisinfectionDownstreamOfTheIsolatedPumpOnly() {
        UUID report = UUID.randomUUID();
        assertThat(send(ada, envelope(ada, visit(report, "As usual")))).hasStatusOk();
        String path = "/visits/reports/" + report + "/water";
        assertThat(post(path, Map.of("takenOn", LocalDate.now(clock).toString())))
                .hasStatus(422)
                .bodyText()
                .contains("Say what was sampled");
        assertThat(post(path, Map.of("product", "hypochlorite", "contactMinutes", "half", "place", "Tank")))
                .hasStatus(422)
                .bodyText()
                .contains("tick that it was isolated", "Give a number", "hypochlorite");
        assertThat(post(path, Map.of("product", "hypochlorite", "isolated", "true", "contactMinutes", "60")))
                .hasStatus3xxRedirection();
        assertThat(page("/visits/reports/" + report)).contains("hypochlorite", "60 min contact");
        assertThat(post(path, Map.of("cleaned", "brush"))).hasStatus(422);
        assertThat(post(path, Map.of("place", "Tank", "takenTime", "25:61"))).hasStatus(422);
        assertThat(mvc.get()
                        .uri("/water-samples/{id}", UUID.randomUUID())
                        .with(user(PageTest.As.who(ada, Role.OFFICE))))
                .hasStatus(404);
    }

    @Test
    @DisplayName(
            "SYN-11 a second report that waits shows its water to the office, and brings it along when it is settled")
    void aHeldReportKeepsItsWater() {
        UUID planned = UUID.randomUUID();
        transaction.executeWithoutResult(status -> jdbc.sql(
                        "insert into visits (id, site_id, kind, planned_on, minutes, state, cancelled_reason) values (?, ?, 'SERVICE', ?, 60, 'CANCELLED', 'Owner away')")
                .params(planned, site.value(), LocalDate.now(clock))
                .update());
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "As usual");
        visit.put("visit", planned);
        visit.put("water", SAMPLE);
        assertThat(send(ada, envelope(ada, visit)))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.result")
                .isEqualTo("HELD");
        UUID held = jdbc.sql("select id from to_settle where report_id = :id")
                .param("id", id)
                .query(UUID.class)
                .single();
        assertThat(mvc.get().uri("/to-settle/{id}", held).with(user(PageTest.As.who(ada, Role.OFFICE))))
                .bodyText()
                .contains("W-17", "E. coli", "hypochlorite", "detergent");
        String waiting = "/to-settle/" + held;
        assertThat(arrivals()).contains(waiting);
        assertThat(post(waiting + "/extra", Map.of())).hasStatus3xxRedirection();
        assertThat(arrivals()).doesNotContain(waiting).contains("/visits/reports/" + id);
        assertThat(page("/visits/reports/" + id)).contains("W-17", "per 100 ml", "detergent");
    }

    @Test
    @DisplayName("SYN-12 what a replaced report promised and showed goes on under the one that replaces it")
    void whatAReplacedReportPromisedIsKept() {
        UUID planned = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("insert into visits (id, site_id, kind, planned_on, minutes) values (?, ?, 'SERVICE', ?, 60)")
                    .params(planned, site.value(), LocalDate.now(clock))
                    .update();
            jdbc.sql("insert into visit_people (visit_id, person_id, lead) values (?, ?, true)")
                    .params(planned, ada.value())
                    .update();
        });
        UUID first = UUID.randomUUID();
        for (UUID id : List.of(first, UUID.randomUUID())) {
            Map<String, Object> visit = visit(id, "As usual");
            visit.put("visit", planned);
            visit.put(
                    "followUps",
                    List.of(
                            Map.of("text", id.equals(first) ? "Bring 25 mm nipple" : "Mend the gate", "promised", true),
                            Map.of("text", "Ring about the float", "promised", false)));
            assertThat(send(ada, envelope(ada, visit))).hasStatusOk();
        }
        byte[] sha = new byte[32];
        new java.util.Random().nextBytes(sha);
        transaction.executeWithoutResult(status -> {
            jdbc.sql(
                            "insert into files (sha256, media_type, size, content, created_at) values (?, 'image/png', ?, ?, now())")
                    .params(sha, sha.length, sha)
                    .update();
            jdbc.sql("insert into photos (id, report_id, sha256, caption) values (?, ?, ?, 'Nipple')")
                    .params(UUID.randomUUID(), first, sha)
                    .update();
        });
        String waiting = "/to-settle/"
                + jdbc.sql("select id from to_settle where visit_id = ?")
                        .param(planned)
                        .query(UUID.class)
                        .single();
        assertThat(mvc.get().uri(waiting).with(user(PageTest.As.who(ada, Role.OFFICE))))
                .bodyText()
                .contains("Kept of the report in force: 1 thing left to do, 1 photo.", "Bring 25 mm nipple");
        assertThat(post(waiting + "/supersede", Map.of())).hasStatus3xxRedirection();
        assertThat(jdbc.sql("select text from open_follow_ups where site_id = ? order by text")
                        .param(site.value())
                        .query(String.class)
                        .list())
                .containsExactly("Bring 25 mm nipple", "Mend the gate", "Ring about the float");
        assertThat(page("/sites/" + site.value() + "/sheet")).contains("Bring 25 mm nipple", "Mend the gate");
        assertThat(jdbc.sql("select r.id from photos p join current_reports r on r.id = p.report_id where p.sha256 = ?")
                        .param(sha)
                        .query(UUID.class)
                        .list())
                .hasSize(1)
                .doesNotContain(first);
    }

    private String arrivals() {
        return new String(
                mvc.get()
                        .uri("/phones")
                        .with(user(PageTest.As.who(ada, Role.OFFICE)))
                        .exchange()
                        .getResponse()
                        .getContentAsByteArray(),
                StandardCharsets.UTF_8);
    }
}
