package app.ramkeeper.fleet.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** Catchments, people at a site, points of a laid line, a baseline that comes later. */
@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class})
class FleetFormsTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    JdbcClient jdbc;

    @Test
    void keepsACatchmentAndSaysWhoChangedItMeanwhile() {
        UUID id = Uuids.next();
        String name = "Sedge Water " + id;
        assertThat(post("/catchments", "id", id.toString(), "name", name, "biosecurity", "CLEAN"))
                .hasStatus3xxRedirection();

        String edit = "/catchments/" + id + "/edit";
        assertThat(get(edit)).hasStatusOk().bodyText().contains(name, "Water weed");
        assertThat(post(edit, "version", "0", "name", name, "biosecurity", "WEED"))
                .hasStatus3xxRedirection();
        assertThat(post(edit, "version", "0", "name", "Other", "biosecurity", "CLEAN"))
                .hasStatus(409)
                .bodyText()
                .contains("Other", name);
        assertThat(get("/catchments")).bodyText().containsSubsequence(name, "Water weed");
        assertThat(post("/catchments", "name", name.toUpperCase(Locale.ROOT), "biosecurity", "CLEAN"))
                .hasStatus(422)
                .bodyText()
                .contains(name.toUpperCase(Locale.ROOT));
        assertThat(post("/catchments", "name", "", "biosecurity", "CLEAN")).hasStatus(422);
        assertThat(get("/catchments/" + Uuids.next() + "/edit")).hasStatus(404);
    }

    @Test
    void mendsThePhoneOfAPersonAtASite() {
        SiteId site = sites.named("Contact farm " + Uuids.next());
        UUID contact = Uuids.next();
        jdbc.sql("insert into contacts (id, name, phone) values (:id, 'Key Holder', '1')")
                .param("id", contact)
                .update();
        jdbc.sql("insert into site_parties (id, site_id, part, contact_id) values (:id, :site, 'KEY_HOLDER', :contact)")
                .param("id", Uuids.next())
                .param("site", site.value())
                .param("contact", contact)
                .update();
        String edit = "/sites/" + site + "/contacts/" + contact + "/edit";

        assertThat(get("/sites/" + site + "/parties")).bodyText().contains(edit);
        assertThat(get(edit)).bodyText().contains("Key Holder");
        assertThat(post(edit, "version", "0", "name", "Key Holder", "phone", "00 555 77"))
                .hasStatus3xxRedirection();
        assertThat(get("/sites/" + site + "/parties")).bodyText().contains("00 555 77");
        assertThat(post(edit, "version", "0", "name", "Mine", "phone", "2"))
                .hasStatus(409)
                .bodyText()
                .contains("Mine");
        assertThat(post(edit, "version", "1", "name", "Mine", "email", "not mail"))
                .hasStatus(422)
                .bodyText()
                .contains("not mail");
        assertThat(get("/sites/" + site + "/contacts/" + Uuids.next() + "/edit"))
                .hasStatus(404);
    }

    @Test
    void keepsThePointsOfALineAsTheyWereLaid() {
        String points = line();
        String before = before(points);

        String text = "0; 100.5; point\n12.25;101;joint;-44.9 169.7;at the third post\n\n30\t99\tair point";
        assertThat(post(points, "before", before, "points", text)).hasStatus3xxRedirection();

        assertThat(get(points))
                .bodyText()
                .containsSubsequence("12.25", "Joint", "at the third post", "Air point")
                .contains("12.25; 101; Joint; -44.900000 169.700000; at the third post");
        assertThat(mvc.get().uri(points).with(user(as(Role.TECHNICIAN))))
                .hasStatusOk()
                .bodyText()
                .contains("at the third post")
                .doesNotContain("<textarea");
        assertThat(post(points, "before", before, "points", "1; 2"))
                .hasStatus(422)
                .bodyText()
                .contains("1; 2", "Somebody else kept points");
        assertThat(jdbc.sql("select count(*) from audit_entries where table_name = 'as_built_points'")
                        .query(Long.class)
                        .single())
                .isGreaterThanOrEqualTo(3);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "5; 1#3; 1            | Line 2 lies 3 m along, before the one above it.",
                "x; 1                 | Line 1 says &quot;x&quot; for how far along",
                "5; 99999             | Line 1 says &quot;99999&quot; for the level",
                "5; 1; tree           | Line 1 says &quot;tree&quot;; what lies there is one of",
                "5; 1; joint; nowhere | Line 1 has a position that cannot be read"
            })
    void namesTheLineThatIsWrong(String typed, String sentence) {
        String points = line();
        String text = typed.strip().replace("#", "\n");

        assertThat(post(points, "before", before(points), "points", text))
                .hasStatus(422)
                .bodyText()
                .contains(sentence.strip(), text.lines().findFirst().orElseThrow());
    }

    @Test
    void refusesMorePointsThanALineHasAndUnknownLines() {
        String points = line();

        assertThat(post(points, "before", before(points), "points", "1;1\n".repeat(10_001)))
                .hasStatus(422)
                .bodyText()
                .contains("at most 10 000 points");
        assertThat(get(points.replaceFirst("system/[^/]+", "system/" + Uuids.next())))
                .hasStatus(404);
    }

    @Test
    void takesABaselineThatWasMeasuredLater() {
        InstallId install = installs.commissioned(LocalDate.of(2025, 11, 3));
        UUID configuration = jdbc.sql("select id from configurations where install_id = :id")
                .param("id", install.value())
                .query(UUID.class)
                .single();
        String edit = "/installs/" + install + "/configuration/" + configuration + "/edit";
        jdbc.sql("delete from baselines where configuration_id = :id")
                .param("id", configuration)
                .update();
        String version = version(configuration);

        assertThat(post(
                        edit,
                        "version",
                        version,
                        "fallM",
                        "4",
                        "liftM",
                        "30",
                        "driveFlow",
                        "60",
                        "deliveredFlow",
                        "4.2",
                        "takenOn",
                        "2026-01-15"))
                .hasStatus3xxRedirection();

        assertThat(get(edit)).bodyText().contains("value=\"4.2\"", "value=\"60", "2026-01-15");
        assertThat(post(edit, "version", version(configuration), "fallM", "4", "liftM", "30"))
                .hasStatus(422)
                .bodyText()
                .contains("cannot be emptied");
    }

    private String version(UUID configuration) {
        return jdbc.sql("select version::text from configurations where id = :id")
                .param("id", configuration)
                .query(String.class)
                .single();
    }

    private String line() {
        InstallId install = installs.commissioned(LocalDate.of(2025, 11, 3));
        UUID element = Uuids.next();
        jdbc.sql(
                        "insert into system_elements (id, install_id, kind, name) values (:id, :install, 'DELIVERY_LINE', 'Top line')")
                .param("id", element)
                .param("install", install.value())
                .update();
        return "/installs/" + install + "/system/" + element + "/points";
    }

    private String before(String points) {
        return body(points).replaceFirst("(?s).*name=\"before\" value=\"([^\"]*)\".*", "$1");
    }

    private String body(String path) {
        return new String(get(path).getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private MvcTestResult get(String path) {
        return mvc.get().uri(path).with(user(office())).exchange();
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post().uri(path).with(user(office())).with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private static CurrentUser office() {
        return as(Role.OFFICE);
    }

    private static CurrentUser as(Role role) {
        return new CurrentUser(Uuids.next(), Uuids.next(), "tester", "Tess Ter", Set.of(role), null);
    }
}
