package app.ramkeeper.quotes.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.audit.Actor;
import app.ramkeeper.identity.signin.Tokens;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What a customer reaches over the link, and what nobody reaches. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class QuoteLinkTests {

    private static final AtomicInteger NETWORK = new AtomicInteger((int) (System.nanoTime() & 0xFFFF));

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Quotes quotes;

    @Autowired
    Sending sending;

    @Autowired
    QuoteLinks links;

    @Autowired
    QuoteStore store;

    @Autowired
    JdbcClient jdbc;

    private QuoteId id;
    private String path;
    private String address;

    @BeforeEach
    void sendOne() {
        Offers offers = new Offers(jdbc);
        offers.tax();
        int network = NETWORK.incrementAndGet();
        address = "10." + (network >> 16 & 255) + "." + (network >> 8 & 255) + "." + (network & 255);
        AsOffice.run(new Actor("test", "test"), () -> {
            id = quotes.open(Offers.whom(null), offers.priced(), "Test");
            offers.priceTheRest(id);
            sending.send(id, "Test");
            path = "/q/" + links.make(id, "Test").address().replaceAll(".*/", "");
            return true;
        });
    }

    @Test
    @DisplayName("SEC-30 SEC-65 SEC-69 shows the quote without anything internal, and answers nothing by looking")
    void sec65ShowsTheQuoteAndAnswersNothingByLooking() throws Exception {
        MvcTestResult page = get(path);

        assertThat(page).hasStatusOk();
        assertThat(page.getResponse().getHeader("Cache-Control")).contains("no-store");
        assertThat(page.getResponse().getHeader("Referrer-Policy")).isEqualTo("same-origin");
        assertThat(page.getResponse().getHeader("X-Robots-Tag")).contains("noindex");
        assertThat(body(page))
                .contains("In a dry month you get 3\u00A0200 to 4\u00A0500 litres a day", "Licence to take", "Accept")
                .doesNotContain("Secret reason", "Our cost", "Margin", "??");
        assertThat(store.latest(id).state()).isEqualTo(QuoteState.SENT);
        get(path);
        assertThat(store.steps(id).stream().filter(step -> step.step() == Step.Kind.OPENED))
                .hasSize(1);
    }

    @Test
    @DisplayName("SEC-57 SEC-67 keeps only the hash of the link's secret, of 256 random bits")
    void sec57KeepsOnlyTheHash() {
        String token = path.substring(3);
        assertThat(token).hasSize(43);

        assertThat(jdbc.sql("select count(*) from quote_links where token_hash = ?")
                        .param(Tokens.hash(token))
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
        assertThat(jdbc.sql("select count(*) from audit_entries where (old_values::text || new_values::text) like ?")
                        .param("%" + token + "%")
                        .query(Integer.class)
                        .single())
                .isZero();
        assertThat(jdbc.sql(
                                "select new_values ->> 'token_hash' from audit_entries where table_name = 'quote_links' order by id desc limit 1")
                        .query(String.class)
                        .single())
                .startsWith("(secret");
    }

    @Test
    @DisplayName("SEC-69 a wrong, an expired and a revoked link look alike")
    void sec69WrongExpiredAndRevokedLookAlike() throws Exception {
        String wrong = body(get("/q/" + Tokens.next()));
        assertThat(get("/q/" + Tokens.next())).hasStatus(404);
        assertThat(get("/q/x")).hasStatus(404);
        assertThat(get(path + "x")).hasStatus(404);

        jdbc.sql("update quote_links set expires_at = ? where token_hash = ?")
                .params(OffsetDateTime.now().minusMinutes(1), Tokens.hash(path.substring(3)))
                .update();
        MvcTestResult expired = get(path);
        jdbc.sql("update quote_links set expires_at = ? where token_hash = ?")
                .params(OffsetDateTime.now().plusDays(1), Tokens.hash(path.substring(3)))
                .update();
        AsOffice.run(new Actor("test", "test"), () -> {
            links.revoke(id, "Test");
            return true;
        });
        MvcTestResult revoked = get(path);

        assertThat(expired).hasStatus(404);
        assertThat(revoked).hasStatus(404);
        assertThat(get(path + "/quote.pdf")).hasStatus(404);
        assertThat(post(path + "/accept", "name", "A", "agreed", "true")).hasStatus(404);
        assertThat(List.of(plain(body(expired)), plain(body(revoked)))).containsOnly(plain(wrong));
        assertThat(store.latest(id).state()).isEqualTo(QuoteState.SENT);
    }

    @ParameterizedTest
    @DisplayName("SEC-64 nothing else opens with the link")
    @ValueSource(
            strings = {
                "/quotes",
                "/quotes/{id}",
                "/quotes/{id}/revisions/1/quote.pdf",
                "/quotes/{id}/preview.pdf",
                "/jobs",
                "/prices.csv"
            })
    void sec64OpensNothingElse(String other) {
        assertThat(get(path)).hasStatusOk();

        assertThat(get(other.replace("{id}", id.toString()))).hasStatus(302);
        assertThat(get(other.replace("{id}", id.toString())).getResponse().getRedirectedUrl())
                .contains("/sign-in");
    }

    @Test
    @DisplayName("SEC-64 another quote's paper cannot be reached by changing the address")
    void sec64LeadsToItsOwnRevisionOnly() throws Exception {
        MvcTestResult paper = get(path + "/quote.pdf");

        assertThat(paper).hasStatusOk().hasContentType("application/pdf");
        assertThat(paper.getResponse().getHeader("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(paper.getResponse().getContentAsByteArray())
                .isEqualTo(store.paper(
                        java.util.Objects.requireNonNull(store.latest(id).pdfSha256())));
        assertThat(get(path + "/../" + id)).hasStatus4xxClientError();
        assertThat(get(path + "/internal.pdf")).hasStatus(404);
    }

    @Test
    void acceptsWithNameTimeAndHash() throws Exception {
        MvcTestResult blank = post(path + "/accept", "reason", "Suits in May");
        assertThat(blank).hasStatus(422);
        assertThat(body(blank)).contains("Give your name", "Tick this to accept", "value=\"Suits in May\"");

        assertThat(post(path + "/accept", "name", "Hemi Stone", "agreed", "true", "reason", "Suits in May"))
                .hasRedirectedUrl(path);
        assertThat(post(path + "/accept", "name", "Hemi Stone", "agreed", "true"))
                .hasRedirectedUrl(path);

        Revision accepted = store.latest(id);
        assertThat(accepted.state()).isEqualTo(QuoteState.ACCEPTED);
        assertThat(accepted.decidedHow()).isEqualTo(Answered.LINK);
        assertThat(jdbc.sql("select decided_sha256 = pdf_sha256 from quote_revisions where id = ?")
                        .param(accepted.id())
                        .query(Boolean.class)
                        .single())
                .isTrue();
        assertThat(body(get(path)))
                .contains("Accepted by Hemi Stone")
                .doesNotContain("<button type=\"submit\" class=\"primary\"");
        assertThat(jdbc.sql("select count(*) from jobs where id = ?")
                        .param(id.value())
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
        assertThat(jdbc.sql(
                                "select distinct actor || ' ' || source from audit_entries where table_name = 'jobs' and row_id = ?")
                        .param(id.toString())
                        .query(String.class)
                        .single())
                .isEqualTo("customer quote link");
        assertThat(post(path + "/decline", "name", "Hemi Stone")).hasStatus(422);
    }

    @Test
    void declinesWithReason() throws Exception {
        assertThat(post(path + "/decline", "name", "Hemi Stone", "reason", "price"))
                .hasRedirectedUrl(path);

        assertThat(store.latest(id).state()).isEqualTo(QuoteState.DECLINED);
        assertThat(store.latest(id).decidedReason()).isEqualTo("price");
        assertThat(body(get(path))).contains("Declined by Hemi Stone");
    }

    @Test
    void aReplacedRevisionCannotBeAccepted() throws Exception {
        AsOffice.run(new Actor("test", "test"), () -> {
            quotes.revise(id, "Test");
            sending.send(id, "Test");
            return true;
        });

        assertThat(body(get(path))).contains("replaced by a newer one");
        MvcTestResult refused = post(path + "/accept", "name", "Hemi Stone", "agreed", "true");
        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains("replaced by a newer one. Please answer that one");
    }

    @Test
    @DisplayName("SEC-31 an answer needs the proof that it comes from our page")
    void sec31NeedsTheToken() {
        assertThat(mvc.post()
                        .uri(path + "/accept")
                        .param("name", "A")
                        .param("agreed", "true")
                        .with(request -> {
                            request.setRemoteAddr(address);
                            return request;
                        }))
                .hasStatus(403);
    }

    @Test
    @DisplayName("SEC-20 slows whoever guesses links")
    void sec20SlowsGuessing() {
        List<Integer> answers = Arrays.stream(new int[80])
                .mapToObj(each -> get("/q/" + Tokens.next()).getResponse().getStatus())
                .toList();

        assertThat(answers.subList(0, 50)).containsOnly(404);
        assertThat(answers.get(79)).isEqualTo(429);
        assertThat(get("/q/" + Tokens.next()).getResponse().getHeader("Retry-After"))
                .isNotNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"A\u0000B", "\u202Eevil"})
    void oddNamesAreNoFailure(String name) {
        assertThat(post(path + "/decline", "name", name).getResponse().getStatus())
                .isIn(302, 422);
        assertThat(post(path + "/decline", "name", "x".repeat(100_000))
                        .getResponse()
                        .getStatus())
                .isEqualTo(422);
    }

    private static String plain(String page) {
        return page.replaceAll("(?s)<meta name=\"csrf\"[^>]*>", "");
    }

    private MvcTestResult get(String uri) {
        return mvc.get()
                .uri(uri)
                .with(request -> {
                    request.setRemoteAddr(address);
                    return request;
                })
                .exchange();
    }

    private MvcTestResult post(String uri, String... fields) {
        var request = mvc.post().uri(uri).with(csrf()).with(each -> {
            each.setRemoteAddr(address);
            return each;
        });
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private static String body(MvcTestResult page) throws Exception {
        return page.getResponse().getContentAsString();
    }
}
