package app.ramkeeper.visits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The online form for a visit, as a browser without script posts it. */
@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@Transactional
class RecordPagesTests {

    private static final Pattern HIDDEN =
            Pattern.compile("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"");

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

    @Autowired
    Clock clock;

    private SiteId site;
    private InstallId install;
    private PersonId jonty;

    @BeforeEach
    void aSite() {
        site = sites.named("Quartz Bend");
        install = installs.commissioned(site, LocalDate.now(clock).minusYears(5));
        jonty = people.named("Jonty Brack");
    }

    @Test
    void asksForWhatIsDueAndTheUsualReadings() {
        assertThat(form())
                .contains(
                        "Clean strainer",
                        "Change delivery valve rubber",
                        "Drive flow",
                        "Delivered flow",
                        "Before you leave");
    }

    @Test
    void recordsAllAsUsualWithTwoReadings() {
        Map<String, String> typed = typed();
        typed.put("asUsual", "true");
        typed.put(reading("DRIVE_FLOW"), "58");
        typed.put(reading("DELIVERED_FLOW"), "3,9");

        var answer = post(typed);

        assertThat(answer).hasStatus(302);
        assertThat(jdbc.sql("select value_si from readings where install_id = ? and quantity = 'DELIVERED_FLOW'")
                        .param(install.value())
                        .query(Double.class)
                        .single())
                .isCloseTo(3.9e-3 / 60, within(1e-12));
        assertThat(jdbc.sql("select count(*) from report_works where install_id = ? and outcome = 'DONE'")
                        .param(install.value())
                        .query(Long.class)
                        .single())
                .isPositive();
    }

    @Test
    @DisplayName("SYN-23 the same form twice makes one record")
    void recordsTheSameFormOnce() {
        Map<String, String> typed = typed();
        typed.put("asUsual", "true");

        assertThat(post(typed)).hasStatus(302);
        assertThat(post(typed)).hasStatus(302);

        assertThat(jdbc.sql("select count(*) from visit_reports where site_id = ?")
                        .param(site.value())
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
    }

    @Test
    @DisplayName("SEC-13 a value that cannot be read is named beside its field and all that was typed stays")
    void keepsWhatWasTyped() {
        Map<String, String> typed = typed();
        typed.put(reading("DRIVE_FLOW"), "fifty-eight");
        typed.put("note", "Gate code changed");

        var answer = post(typed);

        assertThat(answer).hasStatus(422);
        assertThat(text(answer)).contains("fifty-eight", "Gate code changed");
    }

    @Test
    void asksAboutAnImplausibleValueAndTakesItAsRead() {
        Map<String, String> typed = typed();
        typed.put("asUsual", "true");
        typed.put(reading("BEAT_RATE"), "260");
        var asked = post(typed);
        assertThat(asked).hasStatus(422);
        assertThat(text(asked)).contains("asRead");

        typed.put(reading("BEAT_RATE").replace(".value", ".asRead"), "true");

        assertThat(post(typed)).hasStatus(302);
    }

    @Test
    @DisplayName("FLT-29 a NUL in a text is refused, never a failure")
    void refusesNul() {
        Map<String, String> typed = typed();
        typed.put("note", "a\u0000b");

        assertThat(post(typed).getResponse().getStatus()).isIn(400, 422);
    }

    @Test
    @DisplayName("SEC-14 a day in the future is refused")
    void refusesAFutureDay() {
        Map<String, String> typed = typed();
        typed.put("asUsual", "true");
        typed.put("attendedOn", LocalDate.now(clock).plusDays(3).toString());

        assertThat(post(typed)).hasStatus(422);
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void knowsNoOtherSite() {
        assertThat(mvc.get().uri("/sites/" + UUID.randomUUID() + "/record").with(user(technician())))
                .hasStatus(404);
        assertThat(mvc.get().uri("/sites/" + site + "/record").with(user(as(Role.ADMINISTRATOR))))
                .hasStatus(403);
    }

    private String reading(String quantity) {
        Matcher field = Pattern.compile("name=\"([^\"]*" + quantity + "[^\"]*\\.value)\"")
                .matcher(form());
        assertThat(field.find()).as("a field for " + quantity).isTrue();
        return field.group(1);
    }

    private Map<String, String> typed() {
        Map<String, String> typed = new LinkedHashMap<>();
        Matcher hidden = HIDDEN.matcher(form());
        while (hidden.find()) {
            if (!hidden.group(1).equals("_csrf")) {
                typed.put(hidden.group(1), hidden.group(2));
            }
        }
        typed.put("outcome", "DONE");
        typed.put("kind", "SERVICE");
        typed.put("attendedOn", LocalDate.now(clock).toString());
        typed.put("lead", jonty.toString());
        return typed;
    }

    private String formText = "";

    private String form() {
        if (formText.isEmpty()) {
            var answer = mvc.get()
                    .uri("/sites/" + site + "/record")
                    .with(user(technician()))
                    .exchange();
            assertThat(answer).hasStatusOk();
            formText = text(answer);
        }
        return formText;
    }

    private MvcTestResult post(Map<String, String> typed) {
        var request = mvc.post()
                .uri("/sites/" + site + "/record")
                .with(user(technician()))
                .with(csrf());
        typed.forEach(request::param);
        return request.exchange();
    }

    private static String text(MvcTestResult answer) {
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }

    private CurrentUser technician() {
        return as(Role.TECHNICIAN);
    }

    private CurrentUser as(Role role) {
        return new CurrentUser(Uuids.next(), jonty.value(), "jonty", "Jonty Brack", Set.of(role), null);
    }
}
