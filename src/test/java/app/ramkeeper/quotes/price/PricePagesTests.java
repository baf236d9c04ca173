package app.ramkeeper.quotes.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.util.Set;
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
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** The price list keeps what was typed, and no thing has two prices on one day. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class PricePagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/prices",
                "/prices?kind=PIPE&on=2026-01-01",
                "/prices/new",
                "/prices/new?kind=PIPE",
                "/prices/new?kind=TAX",
                "/prices/import",
                "/prices/settings"
            })
    void shows(String path) throws Exception {
        MvcTestResult page = get(path, Role.OFFICE);

        assertThat(page).hasStatusOk();
        assertThat(body(page)).contains("<h1>").doesNotContain("??");
    }

    @Test
    void whatIsNotThereIsMissing() {
        assertThat(get("/prices/" + Uuids.next(), Role.OFFICE)).hasStatus(404);
        assertThat(post("/prices/" + Uuids.next() + "/periods", "fromDate", "2026-01-01", "price", "1"))
                .hasStatus(404);
    }

    @DisplayName("SEC-13 refuses a technician the prices")
    @ParameterizedTest
    @ValueSource(strings = {"/prices", "/prices.csv", "/prices/new", "/prices/settings", "/prices/import"})
    void sec13RefusesATechnician(String path) {
        assertThat(get(path, Role.TECHNICIAN)).hasStatus(403);
    }

    @Test
    void refusesAPriceOnDaysThatHaveOne() throws Exception {
        String page = thing("OTHER");
        assertThat(post(page + "/periods", "fromDate", "2026-01-01", "untilDate", "2026-03-31", "price", "10"))
                .hasRedirectedUrl(page);

        MvcTestResult refused =
                post(page + "/periods", "fromDate", "2026-03-31", "untilDate", "2026-06-30", "price", "12.34");

        assertThat(refused).hasStatus(422);
        assertThat(body(refused))
                .contains("There is another price on some of these days", "value=\"12.34\"", "href=\"#fromDate\"");
        assertThat(post(page + "/periods", "fromDate", "2026-04-01", "untilDate", "", "price", "12.34"))
                .hasRedirectedUrl(page);
    }

    @Test
    void aNewPriceEndsTheOpenOneTheDayBefore() throws Exception {
        String page = thing("OTHER");
        post(page + "/periods", "fromDate", "2026-01-01", "price", "10");
        post(page + "/periods", "fromDate", "2026-07-01", "price", "11");

        assertThat(jdbc.sql("select until_date::text from prices where thing_id = ?::uuid and price = 10")
                        .param(page.substring("/prices/".length()))
                        .query(String.class)
                        .single())
                .isEqualTo("2026-06-30");
    }

    @ParameterizedTest
    @CsvSource({
        "-1, 2026-01-01, '', never below zero, -1",
        "ten, 2026-01-01, '', Give a number, ten",
        "'', 2026-01-01, '', 'Give the price, 0 if it is free', 2026-01-01",
        "5, 2026-01-02, 2026-01-01, ends before it begins, 2026-01-01",
        "5, '', '', from which day, 5",
        "12345678, 2026-01-01, '', Give 9999999 or less, 12345678"
    })
    void saysWhatIsWrongBesideTheField(String price, String from, String until, String sentence, String kept)
            throws Exception {
        MvcTestResult page = post(thing("OTHER") + "/periods", "fromDate", from, "untilDate", until, "price", price);

        assertThat(page).hasStatus(422);
        assertThat(body(page)).contains(sentence, "value=\"" + kept + "\"");
    }

    @Test
    void aPipeNeedsItsSizes() throws Exception {
        MvcTestResult page = post(
                "/prices/new",
                "kind",
                "PIPE",
                "code",
                "P",
                "name",
                "Pipe",
                "unit",
                "m",
                "outsideMm",
                "20",
                "wallMm",
                "10",
                "_drinkingWaterFit",
                "on");

        assertThat(page).hasStatus(422);
        assertThat(body(page)).contains("designs are reckoned with it", "leaves no bore", "value=\"20\"");
    }

    @Test
    void refusesACodeTwiceAndALostUpdate() throws Exception {
        String page = thing("OTHER");
        String code = jdbc.sql("select code from priced_things where id = ?::uuid")
                .param(page.substring("/prices/".length()))
                .query(String.class)
                .single();
        MvcTestResult twice = post(
                "/prices/new",
                "kind",
                "OTHER",
                "code",
                code.toLowerCase(java.util.Locale.ROOT),
                "name",
                "Mine",
                "unit",
                "m",
                "_drinkingWaterFit",
                "on");
        MvcTestResult lost = post(
                page,
                "kind",
                "OTHER",
                "code",
                code,
                "name",
                "Mine",
                "unit",
                "m",
                "version",
                "7",
                "_drinkingWaterFit",
                "on");

        assertThat(twice).hasStatus(422);
        assertThat(body(twice)).contains("Another thing has this code", "value=\"Mine\"");
        assertThat(lost).hasStatus(409);
        assertThat(body(lost)).contains("Somebody else saved this meanwhile", "value=\"Mine\"");
    }

    @Test
    void whatTheExportWritesTheImportReads() throws Exception {
        String page = thing("LABOUR");
        post(page + "/periods", "fromDate", "2026-01-01", "price", "600", "cost", "400");
        MvcTestResult export = get("/prices.csv", Role.OFFICE);
        int before = count();

        MvcTestResult again = upload(body(export));

        assertThat(again).hasRedirectedUrl("/prices");
        assertThat(count()).isEqualTo(before);
    }

    @Test
    void takesNothingOfAFileWithAWrongLine() throws Exception {
        int before = count();
        MvcTestResult page = upload("code,kind,name,unit,from,price\nNEW-1,LABOUR,Day,day,2026-01-01,600\n"
                + "NEW-2,LABOUR,Day,day,2026-01-01,-5\nNEW-3,WATER,Day,day,2026-01-01,5\n");

        assertThat(page).hasStatus(422);
        assertThat(body(page)).contains("Line 3, price: A price is never below zero", "Line 4, kind");
        assertThat(count()).isEqualTo(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "code,kind\n\"", "\u0000\u0000", "code,kind,name,unit\n\u0000,OTHER,x,y"})
    void aFileThatIsNoPriceListIsRefusedInWords(String text) {
        assertThat(upload(text)).hasStatus(422);
    }

    @Test
    void refusesACodeOfAnotherKindAndOverlaps() throws Exception {
        String code = "K-" + Uuids.next();
        MvcTestResult kinds = upload("code,kind,name,unit\n%1$s,LABOUR,Day,day\n%1$s,OTHER,Day,day\n".formatted(code));
        MvcTestResult days =
                upload(("code;kind;name;unit;from;until;price\n%1$s;LABOUR;Day;day;2026-01-01;2026-06-30;1,5\n"
                                + "%1$s;LABOUR;Day;day;2026-06-30;;2\n")
                        .formatted(code));

        assertThat(kinds).hasStatus(422);
        assertThat(body(kinds)).contains("Line 3", "is a LABOUR, not a OTHER");
        assertThat(days).hasStatus(422);
        assertThat(body(days)).contains("Line 3: this code has another price on some of these days");
    }

    private int count() {
        return jdbc.sql("select count(*) from priced_things t left join prices p on p.thing_id = t.id")
                .query(Integer.class)
                .single();
    }

    private String thing(String kind) {
        return java.util.Objects.requireNonNull(post(
                        "/prices/new",
                        "kind",
                        kind,
                        "code",
                        "C-" + Uuids.next(),
                        "name",
                        "Thing",
                        "unit",
                        "day",
                        "_drinkingWaterFit",
                        "on")
                .getResponse()
                .getRedirectedUrl());
    }

    private MvcTestResult upload(String text) {
        return mvc.post()
                .uri("/prices/import")
                .multipart()
                .file(new MockMultipartFile("file", "p.csv", "text/csv", text.getBytes(StandardCharsets.UTF_8)))
                .with(csrf())
                .with(user(somebody(Role.OFFICE)))
                .exchange();
    }

    private MvcTestResult get(String path, Role role) {
        return mvc.get().uri(path).with(user(somebody(role))).exchange();
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post().uri(path).with(csrf()).with(user(somebody(Role.OFFICE)));
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private static CurrentUser somebody(Role role) {
        return new CurrentUser(Uuids.next(), Uuids.next(), "somebody", "Somebody", Set.of(role), null);
    }

    private static String body(MvcTestResult page) throws Exception {
        return page.getResponse().getContentAsString();
    }
}
