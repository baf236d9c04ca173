package app.ramkeeper.fleet.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
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

@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class})
class RegisterPagesTests {

    private static final String ATTACK = "<img src=x onerror=alert(1)>\"'& ${7*7} [[${7*7}]] T(java.lang.Runtime)";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Customers customers;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    JdbcClient jdbc;

    private static CurrentUser as(Role role) {
        return new CurrentUser(Uuids.next(), Uuids.next(), "tester", "Tess Ter", Set.of(role), null);
    }

    private MvcTestResult get(Role role, String path, Object... values) {
        return mvc.get().uri(path, values).with(user(as(role))).exchange();
    }

    private MvcTestResult post(String path, Object id, String... fields) {
        var request = mvc.post().uri(path, id).with(user(as(Role.OFFICE))).with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    @Test
    void listsConsentsThatComeDueByTheFirstOfTheirDays() {
        SiteId site = sites.named("Weir paddock");
        post(
                "/sites/{id}/consents",
                site,
                "kind",
                "TAKE",
                "number",
                "WT-1",
                "dueOn",
                "2020-02-03",
                "expiresOn",
                "2090-01-01");
        post("/sites/{id}/consents", site, "kind", "EASEMENT", "number", "ES-2", "expiresOn", "2020-01-02");
        post("/sites/{id}/consents", site, "kind", "DISCHARGE", "number", "DC-3", "dueOn", "2089-02-03");

        assertThat(get(Role.OFFICE, "/consents?within=30"))
                .hasStatusOk()
                .bodyText()
                .containsSubsequence("Thu 2 Jan 2020", "ES-2", "Mon 3 Feb 2020", "WT-1")
                .doesNotContain("DC-3");
        assertThat(get(Role.OFFICE, "/sites/{id}", site)).bodyText().contains("To do by", "Mon 3 Feb 2020");
    }

    @Test
    void showsEveryPageToTheOffice() {
        SiteId site = sites.ownedBy("Page Turner", "Paper creek");
        InstallId install = installs.commissioned(site, LocalDate.of(2020, 2, 29));
        CustomerId customer = customers.named("Forms & Sons");
        UUID pump = jdbc.sql("select pump_id from pump_fittings where install_id = :id")
                .param("id", install.value())
                .query(UUID.class)
                .single();

        for (String page : new String[] {
            "/customers",
            "/customers?q=forms",
            "/customers/new",
            "/customers/" + customer,
            "/customers/" + customer + "/edit",
            "/customers/" + customer + "/merge",
            "/customers/" + customer + "/agreements/new",
            "/sites",
            "/sites?q=paper",
            "/sites/new",
            "/sites/pick?q=paper",
            "/sites/" + site,
            "/sites/" + site + "/edit",
            "/sites/" + site + "/parties",
            "/sites/" + site + "/access",
            "/sites/" + site + "/consents/new",
            "/consents",
            "/sites/" + site + "/sell?q=forms",
            "/sites/" + site + "/split",
            "/sites/" + site + "/merge",
            "/sites/" + site + "/installs/new",
            "/installs/" + install,
            "/installs/" + install + "/edit",
            "/installs/" + install + "/configuration/new",
            "/installs/" + install + "/state",
            "/installs/" + install + "/system",
            "/installs/" + install + "/swap",
            "/pumps",
            "/pumps?q=RK",
            "/pumps/new",
            "/pumps/" + pump,
            "/pumps/" + pump + "/edit",
            "/pumps/" + pump + "/move",
            "/fix-lists"
        }) {
            assertThat(get(Role.OFFICE, page))
                    .as(page)
                    .hasStatusOk()
                    .bodyText()
                    .as(page)
                    .doesNotContain("??");
        }
    }

    @Test
    void aPumpIsTakenFromWhereItWorksOnlyWhenThatIsSaid() {
        InstallId here = installs.commissioned(LocalDate.of(2024, 2, 3));
        InstallId there = installs.commissioned(LocalDate.of(2024, 2, 3));
        UUID theirs = pumpAt(there);
        assertThat(get(Role.OFFICE, "/installs/" + here + "/swap"))
                .hasStatusOk()
                .bodyText()
                .doesNotContain(theirs.toString());

        assertThat(swap(here, theirs, "q")).hasStatus(422).bodyText().contains("works at another install");
        assertThat(pumpAt(there)).isEqualTo(theirs);

        assertThat(swap(here, theirs, "takeAway")).hasStatus3xxRedirection();
        assertThat(pumpAt(here)).isEqualTo(theirs);
    }

    private MvcTestResult swap(InstallId install, UUID pump, String tick) {
        return post(
                "/installs/{id}/swap",
                install,
                "pump",
                pump.toString(),
                "placeNo",
                "1",
                "on",
                "2025-03-04",
                "oldGoesTo",
                "WORKSHOP",
                tick,
                "true");
    }

    private UUID pumpAt(InstallId install) {
        return jdbc.sql("select pump_id from pump_fittings where install_id = :id and until_date is null")
                .param("id", install.value())
                .query(UUID.class)
                .single();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/sites/%s", "/sites/%s/edit", "/installs/%s", "/pumps/%s", "/customers/%s", "/sites/%s/access"})
    void answersUnknownIdsWith404(String path) {
        assertThat(get(Role.OFFICE, path.formatted(UUID.randomUUID()))).hasStatus(404);
        assertThat(get(Role.OFFICE, path.formatted("no-id"))).hasStatus(404);
    }

    @Test
    @DisplayName("SEC-01 SEC-07 shows hostile text literally")
    void sec01Sec07ShowsHostileTextLiterally() {
        SiteId site = sites.named(ATTACK);

        assertThat(get(Role.OFFICE, "/sites/" + site))
                .bodyText()
                .contains("&lt;img src=x")
                .doesNotContain("<img src=x")
                .contains("${7*7}");
        assertThat(get(Role.OFFICE, "/sites/{id}/edit", site)).bodyText().doesNotContain("<img src=x");
    }

    @ParameterizedTest
    @ValueSource(strings = {"'", "\";--", "1) or (1=1", ".*", "[", "(a+)+$", "%", "\\", "${7*7}", "#{1}"})
    @DisplayName("SEC-04 SEC-06 takes a search literally")
    void sec04Sec06TakesSearchLiterally(String q) {
        for (String path : new String[] {"/sites?q={q}", "/customers?q={q}", "/pumps?q={q}", "/sites/pick?q={q}"}) {
            assertThat(get(Role.OFFICE, path, q)).as(path + q).hasStatusOk();
        }
        assertThat(get(Role.OFFICE, "/sites?q={q}", "a".repeat(5000))).hasStatusOk();
        assertThat(get(Role.OFFICE, "/sites?after={q}", q)).hasStatusOk();
    }

    @Test
    @DisplayName("SEC-13 SEC-15 lists each wrong field and changes nothing")
    void sec13Sec15ListsEachWrongField() {
        SiteId site = sites.named("Before");

        MvcTestResult answer = post(
                "/sites/{id}/edit",
                site,
                "version",
                "0",
                "name",
                "",
                "altitudeM",
                "1e309",
                "walkMinutes",
                "2147483648",
                "sourceKind",
                "SEA",
                "position",
                "north of the shed",
                "wayIn",
                "x".repeat(4001));

        assertThat(answer).hasStatus(422).bodyText().contains("#altitudeM", "#walkMinutes", "#sourceKind", "#position");
        assertThat(answer).bodyText().contains("north of the shed", "1e309");
        assertThat(post("/sites/{id}/edit", site, "version", "0", "name", "", "wayIn", "x".repeat(4001)))
                .hasStatus(422)
                .bodyText()
                .contains("#name", "#wayIn");
        assertThat(get(Role.OFFICE, "/sites/" + site)).bodyText().contains("Before");
    }

    @Test
    @DisplayName("SEC-14 refuses a closed period that ends before it begins, in words")
    void sec14RefusesEndBeforeStart() {
        SiteId site = sites.named("Lambs");

        assertThat(post("/sites/{id}/access/CLOSED", site, "fromDate", "2026-10-02", "untilDate", "2026-10-01"))
                .hasStatus(422)
                .bodyText()
                .contains("must not lie before the first");
    }

    @Test
    @DisplayName("SEC-21 ignores fields that a form does not have")
    void sec21IgnoresForeignFields() {
        SiteId site = sites.named("Mine");
        SiteId other = sites.named("Other");

        assertThat(post(
                        "/sites/{id}/edit",
                        site,
                        "version",
                        "0",
                        "name",
                        "Mine",
                        "id",
                        other.toString(),
                        "mergedInto",
                        other.toString()))
                .hasStatus3xxRedirection();

        assertThat(get(Role.OFFICE, "/sites/" + site)).hasStatusOk().bodyText().contains("Mine");
        assertThat(get(Role.OFFICE, "/sites/" + other)).bodyText().contains("Other");
    }

    @Test
    @DisplayName("SEC-65 keeps private notes and prices from the technician")
    void sec65KeepsPrivateNotesFromTechnician() {
        SiteId site = sites.named("Quiet place");
        post("/sites/{id}/edit", site, "version", "0", "name", "Quiet place", "privateNotes", "pays late");

        assertThat(get(Role.OFFICE, "/sites/" + site)).bodyText().contains("pays late");
        assertThat(get(Role.TECHNICIAN, "/sites/" + site))
                .hasStatusOk()
                .bodyText()
                .doesNotContain("pays late");
        assertThat(get(Role.TECHNICIAN, "/sites/" + site + "/edit")).hasStatus(403);
        assertThat(get(Role.TECHNICIAN, "/customers")).hasStatus(403);
    }

    @Test
    @DisplayName(
            "SYN-08 SYN-10 refuses a change of an old version, shows both texts of a lost update and keeps what was typed")
    void syn10ShowsBothTexts() {
        SiteId site = sites.named("Old name");
        assertThat(post("/sites/{id}/edit", site, "version", "0", "name", "First name"))
                .hasStatus3xxRedirection();

        MvcTestResult second = post("/sites/{id}/edit", site, "version", "0", "name", "Second name");

        assertThat(second)
                .hasStatus(409)
                .bodyText()
                .contains("First name", "Second name", "name=\"version\" value=\"1\"");
        assertThat(post("/sites/{id}/edit", site, "version", "1", "name", "Second name"))
                .hasStatus3xxRedirection();
    }

    @Test
    @DisplayName("SYN-09 the same change sent again after a lost answer has no second effect")
    void syn09SameChangeAgain() {
        SiteId site = sites.named("Before");
        assertThat(post("/sites/{id}/edit", site, "version", "0", "name", "After"))
                .hasStatus3xxRedirection();

        assertThat(post("/sites/{id}/edit", site, "version", "0", "name", "After"))
                .hasStatus(409);

        assertThat(jdbc.sql("select name || ' ' || version from sites where id = :id")
                        .param("id", site.value())
                        .query(String.class)
                        .single())
                .isEqualTo("After 1");
    }

    @Test
    @DisplayName("SYN-23 makes one customer of two equal posts")
    void syn23MakesOneOfTwoEqualPosts() {
        String id = Uuids.next().toString();

        for (int i = 0; i < 2; i++) {
            assertThat(post("/customers", "", "id", id, "name", "Twice posted")).hasStatus3xxRedirection();
        }

        assertThat(jdbc.sql("select count(*) from customers where name = 'Twice posted'")
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
    }

    @Test
    @DisplayName("FLT-27 finds composed and decomposed spelling alike")
    void flt27FindsBothSpellings() {
        SiteId site = sites.named("Wh\u0101ngarara r\u00e9serve");

        for (String q : new String[] {"wh\u0101ngarara", "wha\u0304ngarara", "whangarara re\u0301serve"}) {
            assertThat(get(Role.OFFICE, "/sites?q={q}", q)).bodyText().contains(site.toString());
        }
    }

    @Test
    @DisplayName("FLT-28 FLT-29 drops direction controls and names the field that holds NUL")
    void flt28Flt29CleansText() {
        SiteId site = sites.named("Plain");

        assertThat(post("/sites/{id}/edit", site, "version", "0", "name", "a\u0000b"))
                .hasStatus(422)
                .bodyText()
                .contains("control character");
        assertThat(get(Role.OFFICE, "/sites?q={q}", "a\u0000b")).hasStatus(400);
        assertThat(post("/sites/{id}/edit", site, "version", "0", "name", "Rev\u202Eersed"))
                .hasStatus3xxRedirection();
        assertThat(get(Role.OFFICE, "/sites/" + site))
                .bodyText()
                .contains("Reversed")
                .doesNotContain("\u202E");
    }

    @Test
    @DisplayName("SEC-02 makes no link of a script address")
    void sec02MakesNoScriptLink() {
        CustomerId customer = customers.named("Linker");

        assertThat(post(
                        "/customers/{id}/edit",
                        customer,
                        "version",
                        "0",
                        "name",
                        "Linker",
                        "email",
                        "javascript:alert(1)"))
                .hasStatus(422);
        assertThat(post(
                        "/customers/{id}/edit",
                        customer,
                        "version",
                        "0",
                        "name",
                        "Linker",
                        "phone",
                        "javascript:alert(1)"))
                .hasStatus3xxRedirection();
        assertThat(get(Role.OFFICE, "/customers/" + customer)).bodyText().doesNotContain("href=\"javascript:");
    }
}
