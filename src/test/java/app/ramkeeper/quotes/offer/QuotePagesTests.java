package app.ramkeeper.quotes.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.audit.Actor;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** The office's pages of quotes, jobs and billing. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class QuotePagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Quotes quotes;

    @Autowired
    QuoteStore store;

    @Autowired
    JdbcClient jdbc;

    private Offers offers;
    private QuoteId id;
    private String page;

    @BeforeEach
    void draft() {
        offers = new Offers(jdbc);
        offers.tax();
        AsOffice.run(new Actor("test", "test"), () -> {
            id = quotes.open(Offers.whom(null), offers.priced(), "Test");
            offers.priceTheRest(id);
            return true;
        });
        page = "/quotes/" + id;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/quotes",
                "/quotes?state=DRAFT&words=tank",
                "/quotes/new",
                "{q}",
                "{q}/edit",
                "{q}/lines/new",
                "{q}/lines/{l}",
                "/jobs",
                "/billing"
            })
    void shows(String path) throws Exception {
        UUID line = store.latest(id).lines().get(0).id();
        MvcTestResult shown = get(path.replace("{q}", page).replace("{l}", line.toString()), Role.OFFICE);

        assertThat(shown).hasStatusOk();
        assertThat(body(shown)).contains("<h1>").doesNotContain("??");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/quotes/{x}",
                "/quotes/{x}/edit",
                "/quotes/{x}/lines/new",
                "/quotes/{x}/revisions/1/quote.pdf",
                "{q}/lines/{x}",
                "{q}/revisions/7/quote.pdf",
                "/jobs/{x}",
                "/jobs/{x}/pick-list",
                "/billing/exports/{x}/lines.csv",
                "/billing/visits/{x}"
            })
    void whatIsNotThereIsMissing(String path) {
        assertThat(get(path.replace("{q}", page).replace("{x}", Uuids.next().toString()), Role.OFFICE))
                .hasStatus(404);
    }

    @DisplayName("SEC-63 SEC-65 refuses a technician quotes, jobs and billing")
    @ParameterizedTest
    @ValueSource(strings = {"/quotes", "{q}", "{q}/preview.pdf", "/jobs", "/billing"})
    void sec63RefusesATechnician(String path) {
        assertThat(get(path.replace("{q}", page), Role.TECHNICIAN)).hasStatus(403);
    }

    @Test
    void fromDraftOverSendingAndAnswerToTheBooks() throws Exception {
        assertThat(post(page + "/send")).hasRedirectedUrl(page);
        assertThat(body(get(page, Role.OFFICE))).contains("revision 1 sent", "The customer&#39;s answer", "Margin");
        assertThat(post(
                        page + "/answer",
                        "revision",
                        "1",
                        "accepted",
                        "true",
                        "name",
                        "Hemi Stone",
                        "how",
                        "PAPER",
                        "note",
                        "price"))
                .hasRedirectedUrl(page);

        String job = "/jobs/" + id;
        assertThat(body(get(job, Role.OFFICE))).contains("Dig intake", "installation, no day yet", "/D", "ready");
        assertThat(body(get(job + "/pick-list", Role.OFFICE))).contains("Pump ").doesNotContain("Labour");
        UUID lay = jdbc.sql("select id from job_phases where job_id = ? and kind = 'LAY'")
                .param(id.value())
                .query(UUID.class)
                .single();
        MvcTestResult wrong = post(
                job + "/phases/" + lay,
                "name",
                "Lay it",
                "fromDate",
                "2026-05-04",
                "untilDate",
                "2026-05-01",
                "version",
                "0");
        assertThat(wrong).hasStatus(422);
        assertThat(body(wrong)).contains("ends before it begins", "value=\"2026-05-01\"");
        assertThat(post(
                        job + "/phases/" + lay,
                        "name",
                        "Lay it",
                        "fromDate",
                        "2026-05-01",
                        "untilDate",
                        "2026-05-04",
                        "heldBecause",
                        "Rain",
                        "version",
                        "0"))
                .hasRedirectedUrl(job);
        assertThat(body(get(job, Role.OFFICE))).contains("on hold", "Rain");
        assertThat(post(job + "/phases/" + lay, "name", "Lay it", "fromDate", "2026-05-01", "version", "0"))
                .hasStatus(409);
        assertThat(post(job + "/phases/" + lay, "name", "Lay it", "doneOn", "2026-05-04", "version", "1"))
                .hasRedirectedUrl(job);
        assertThat(ready()).isEqualTo(2);
    }

    @Test
    void discountsStandOnTheDraftAndComeAlongWhenItIsRevised() throws Exception {
        assertThat(post(page + "/discounts", "percent", "5", "amount", "10", "text", "kept words"))
                .hasStatus(422)
                .bodyText()
                .contains("Give either a share or an amount.", "kept words");
        assertThat(post(page + "/discounts", "percent", "101")).hasStatus(422);
        assertThat(post(page + "/discounts", "amount", "-1")).hasStatus(422);
        assertThat(post(page + "/discounts", "lineGroup", "VESSEL", "amount", "9999999"))
                .hasStatus(422)
                .bodyText()
                .contains("This is more than there is to take off");
        assertThat(post(page + "/discounts", "lineGroup", "PUMPS", "percent", "10", "text", "old customer"))
                .hasRedirectedUrl(page);
        assertThat(post(page + "/discounts", "amount", "250.50", "text", "digging by the farm"))
                .hasRedirectedUrl(page);
        assertThat(body(get(page, Role.OFFICE)))
                .contains("Discount 10 % (Pumps): old customer", "Discount: digging by the farm", "−250.50");

        post(page + "/send");
        UUID discount = jdbc.sql(
                        "select d.id from quote_discounts d join quote_revisions r on r.id = d.revision_id where r.quote_id = ? limit 1")
                .param(id.value())
                .query(UUID.class)
                .single();
        assertThat(post(page + "/discounts/" + discount + "/remove")).hasStatus(409);
        post(page + "/revise");
        assertThat(body(get(page, Role.OFFICE)))
                .contains("revision 2", "Discount 10 % (Pumps): old customer", "digging by the farm");
    }

    @Test
    void aVariationCountsOnceAccepted() throws Exception {
        accepted();
        String job = "/jobs/" + id;
        String tax = AsOffice.run(
                new Actor("t", "t"), () -> quotes.taxes().get(0).id().toString());
        assertThat(post(job + "/variations", "text", "", "net", "ten", "tax", tax))
                .hasStatus(422);
        assertThat(post(job + "/variations", "text", "Second trough", "net", "-100.10", "tax", tax))
                .hasRedirectedUrl(job);
        UUID variation = jdbc.sql("select id from job_variations where job_id = ?")
                .param(id.value())
                .query(UUID.class)
                .single();

        post(job + "/variations/" + variation + "/answer", "accepted", "true", "how", "PHONE");
        post(job + "/variations/" + variation + "/answer", "accepted", "true", "how", "PHONE");

        // worked by hand: 15 % of -100.10 is -15.015, half up (away from zero) -15.02
        assertThat(jdbc.sql("select total from billing_items where variation_id = ?")
                        .param(variation)
                        .query(java.math.BigDecimal.class)
                        .list())
                .singleElement()
                .satisfies(total -> assertThat(total).isEqualByComparingTo("-115.12"));
        assertThat(post(job + "/variations/" + variation + "/answer", "accepted", "false", "how", "PHONE"))
                .hasStatus(409);
    }

    @Test
    void eachLineLeavesForTheBooksOnce() throws Exception {
        accepted();
        assertThat(post("/billing/export")).hasRedirectedUrl("/billing");
        UUID export = jdbc.sql("select export_id from billing_items where job_id = ? and kind = 'DEPOSIT'")
                .param(id.value())
                .query(UUID.class)
                .single();
        String csv = body(get("/billing/exports/" + export + "/lines.csv", Role.OFFICE));
        assertThat(csv).contains("reference,ready_on", store.card(id).number() + "/D", "Hemi Stone", "15");

        assertThat(post("/billing/export")).hasStatus(409);
        assertThat(body(get("/billing/exports/" + export + "/lines.csv", Role.OFFICE)))
                .isEqualTo(csv);
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> jdbc.sql("update billing_items set net = 1, total = 1 + tax where export_id = ?")
                                .param(export)
                                .update())
                .hasMessageContaining("never changed");
    }

    @Test
    void aVisitIsChargedOnceEvenIfItsReportIsCorrected() throws Exception {
        UUID report = report(Uuids.next(), null);
        jdbc.sql("update quote_settings set bill_from = '2026-01-01'").update();
        String charge = "/billing/visits/" + report;
        assertThat(body(get("/billing", Role.OFFICE))).contains(charge, "nobody named");
        String tax = AsOffice.run(
                new Actor("t", "t"), () -> quotes.taxes().get(0).id().toString());
        MvcTestResult neither = post(charge, "text", "Call-out", "tax", tax);
        assertThat(neither).hasStatus(422);
        assertThat(body(neither)).contains("Give the price, or say why");
        MvcTestResult unpaid = post(charge, "text", "Call-out", "net", "180", "tax", tax);
        assertThat(unpaid).hasStatus(422);
        assertThat(body(unpaid)).contains("Nobody pays for", "value=\"180\"");

        assertThat(post(charge, "text", "Call-out", "waivedBecause", "Warranty", "tax", tax))
                .hasRedirectedUrl("/billing");
        report(Uuids.next(), report);

        assertThat(body(get("/billing", Role.OFFICE))).doesNotContain(charge);
        assertThat(post(charge, "text", "Call-out", "net", "180", "tax", tax)).hasStatus(404);
    }

    private UUID report(UUID id, @org.jspecify.annotations.Nullable UUID corrects) {
        UUID site = corrects == null
                ? Uuids.next()
                : jdbc.sql("select site_id from visit_reports where id = ?")
                        .param(corrects)
                        .query(UUID.class)
                        .single();
        UUID person = Uuids.next();
        jdbc.sql("insert into people (id, name) values (?, 'Somebody')")
                .param(person)
                .update();
        if (corrects == null) {
            jdbc.sql("insert into sites (id, name) values (?, 'Far Paddock')")
                    .param(site)
                    .update();
        }
        jdbc.sql(
                        "insert into visit_reports (id, site_id, kind, supersedes, attended_on, recorded_at, recorded_by, outcome, content_hash, source)"
                                + " values (:id, :site, 'CALL_OUT', :corrects, '2026-02-03', now(), :person, 'DONE', :hash, 'FORM')")
                .param("id", id)
                .param("site", site)
                .param("corrects", corrects, java.sql.Types.OTHER)
                .param("person", person)
                .param("hash", new byte[32])
                .update();
        return id;
    }

    @ParameterizedTest
    @CsvSource({
        "quantity, -1, Give 0 or more",
        "quantity, 1e309, Give",
        "price, -0.01, Give 0 or more",
        "price, 1.23456, at most",
        "discountPercent, 101, Give 100 or less",
        "text, '', fill this in",
        "price, '', fill this in"
    })
    void saysWhatIsWrongWithALine(String field, String typed, String sentence) throws Exception {
        java.util.Map<String, String> fields = new java.util.LinkedHashMap<>();
        fields.put("lineGroup", "OTHER");
        fields.put("text", "Kept words");
        fields.put("quantity", "2");
        fields.put("unit", "piece");
        fields.put("price", "3");
        fields.put(
                "tax",
                AsOffice.run(
                        new Actor("t", "t"), () -> quotes.taxes().get(0).id().toString()));
        fields.put(field, typed);
        MvcTestResult refused = post(
                page + "/lines",
                fields.entrySet().stream()
                        .flatMap(e -> java.util.stream.Stream.of(e.getKey(), e.getValue()))
                        .toArray(String[]::new));

        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains(sentence, "value=\"piece\"");
    }

    @Test
    @DisplayName("SYN-10 a lost update of a quote shows both texts")
    void syn10ShowsBothTexts() throws Exception {
        MvcTestResult lost = post(
                page + "/edit",
                "title",
                "Mine",
                "customerName",
                "Hemi Stone",
                "place",
                "Stone Flat",
                "validUntil",
                "2030-01-01",
                "version",
                "9",
                "draftVersion",
                "9");

        assertThat(lost).hasStatus(409);
        assertThat(body(lost)).contains("Ram pump for the top tank", "value=\"Mine\"");
    }

    @Test
    void anAnswerNeedsItsFieldsAndALostQuoteItsReason() throws Exception {
        post(page + "/send");
        MvcTestResult blank = post(page + "/answer", "revision", "1", "name", "", "how", "PHONE", "note", "too late");
        assertThat(blank).hasStatus(422);
        assertThat(body(blank)).contains("too late", "error-summary");

        post(
                page + "/answer",
                "revision",
                "1",
                "accepted",
                "false",
                "name",
                "Hemi",
                "how",
                "PHONE",
                "note",
                "too late");
        assertThat(store.latest(id).state()).isEqualTo(QuoteState.DECLINED);
        assertThat(body(get("/quotes", Role.OFFICE))).contains("too late", "lost");
    }

    @Test
    void sendingTwiceIsAConflictInWords() throws Exception {
        post(page + "/send");

        MvcTestResult again = post(page + "/send");

        assertThat(again).hasStatus(409);
        assertThat(body(again)).contains("sent already");
    }

    private void accepted() {
        post(page + "/send");
        post(page + "/answer", "revision", "1", "accepted", "true", "name", "Hemi Stone", "how", "TEXT");
    }

    private int ready() {
        return jdbc.sql("select count(*) from billing_items where job_id = ? and ready_on is not null")
                .param(id.value())
                .query(Integer.class)
                .single();
    }

    private MvcTestResult get(String path, Role role) {
        return mvc.get().uri(path).with(user(as(role))).exchange();
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post().uri(path).with(csrf()).with(user(as(Role.OFFICE)));
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private static CurrentUser as(Role role) {
        return new CurrentUser(Uuids.next(), Uuids.next(), "somebody", "Somebody", Set.of(role), null);
    }

    private static String body(MvcTestResult shown) throws Exception {
        return shown.getResponse().getContentAsString();
    }
}
