package app.ramkeeper.fleet.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** A farm is sold, split, or was on the register twice. */
@PageTest
class FarmPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Customers customers;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    EntityManager entities;

    private PersonId clerk;
    private SiteId site;
    private UUID seller;
    private CustomerId buyer;

    @BeforeEach
    void aFarm() {
        clerk = people.named("Tess Ter");
        site = sites.ownedBy("Hana Quarterly", "Quarter Flat");
        seller = jdbc.sql("select customer_id from site_parties where site_id = ?")
                .param(site.value())
                .query(UUID.class)
                .single();
        buyer = customers.named("Bram Newcombe");
    }

    @Test
    void sellsAFarmFromADayOnAndKeepsNotesFromTheBuyer() {
        jdbc.sql("update sites set private_notes = 'pays late' where id = ?")
                .param(site.value())
                .update();
        entities.clear();

        assertThat(text(get("/sites/" + site + "/sell?q=newcombe"))).contains("Hana Quarterly", "Bram Newcombe");
        assertThat(post(
                        "/sites/" + site + "/sell",
                        "seller",
                        seller.toString(),
                        "buyer",
                        buyer.toString(),
                        "on",
                        "2026-03-01",
                        "parts",
                        "OWNER"))
                .hasStatus3xxRedirection();

        assertThat(parties()).containsExactly(seller + " null 2026-03-01", buyer.value() + " 2026-03-01 null");
        assertThat(jdbc.sql("select coalesce(private_notes, '') from sites where id = ?")
                        .param(site.value())
                        .query(String.class)
                        .single())
                .isEmpty();
        assertThat(jdbc.sql("select private_notes from customers where id = ?")
                        .param(seller)
                        .query(String.class)
                        .single())
                .contains("pays late", "Quarter Flat");
    }

    @Test
    @DisplayName("SEC-13 a sale without buyer, day or parts names each, and what was chosen stays")
    void sec13SaleWithoutBuyer() {
        MvcTestResult answer =
                post("/sites/" + site + "/sell", "q", "newcombe", "seller", seller.toString(), "on", "some day");

        assertThat(answer).hasStatus(422);
        assertThat(text(answer)).contains("some day", "Bram Newcombe");
        assertThat(text(post("/sites/" + site + "/sell", "q", "newcombe", "seller", seller.toString())))
                .containsPattern("id=\"buyer-error\"[^>]*>Find and choose the buyer.")
                .containsPattern("id=\"parts-error\"[^>]*>Choose the parts that change hands.")
                .contains("Give the day on which the buyer begins.", "Bram Newcombe")
                .doesNotContain("seller-error", "Please fill this in");
        assertThat(text(answer)).containsPattern("name=\"seller\"[^>]*value=\"" + seller + "\"[^>]*checked");
        assertThat(parties()).containsExactly(seller + " null null");
    }

    @Test
    void aSaleToOneselfIsRefusedInWords() {
        MvcTestResult answer = post(
                "/sites/" + site + "/sell",
                "seller",
                seller.toString(),
                "buyer",
                seller.toString(),
                "on",
                "2026-03-01",
                "parts",
                "OWNER");

        assertThat(answer).hasStatus(422);
        assertThat(text(answer))
                .containsPattern("id=\"buyer-error\"[^>]*>Seller and buyer are the same customer.")
                .contains("2026-03-01");
    }

    @Test
    void aSaleBeforeAllThatIsKnownIsAskedAboutOnce() {
        installs.commissioned(site, LocalDate.of(2018, 5, 4));
        String[] early = {
            "q",
            "newcombe",
            "seller",
            seller.toString(),
            "buyer",
            buyer.toString(),
            "on",
            "1999-01-01",
            "parts",
            "OWNER"
        };

        MvcTestResult asked = post("/sites/" + site + "/sell", early);
        assertThat(asked).hasStatus(422);
        assertThat(text(asked))
                .contains("id=\"on-error\"", "Was it really Fri 1 Jan 1999?", "before Fri 4 May 2018", "1999-01-01")
                .containsPattern("value=\"" + buyer.value() + "\"[^>]*checked")
                .contains("name=\"sure\"");
        assertThat(parties()).containsExactly(seller + " null null");

        assertThat(post("/sites/" + site + "/sell", with(early, "sure", "true")))
                .hasStatus3xxRedirection();
        assertThat(parties()).containsExactly(seller + " null 1999-01-01", buyer.value() + " 1999-01-01 null");
    }

    @Test
    void anotherSearchKeepsWhatWasChosen() {
        MvcTestResult again = post(
                "/sites/" + site + "/sell",
                "find",
                "yes",
                "q",
                "nobody of that name",
                "seller",
                seller.toString(),
                "buyer",
                buyer.toString(),
                "on",
                "2026-03-01");

        assertThat(again).hasStatusOk();
        assertThat(text(again))
                .contains("Bram Newcombe", "2026-03-01")
                .doesNotContain("Please mend this")
                .containsPattern("value=\"" + buyer.value() + "\"[^>]*checked");
        assertThat(parties()).containsExactly(seller + " null null");
    }

    private static String[] with(String[] fields, String... more) {
        return Stream.of(fields, more).flatMap(Stream::of).toArray(String[]::new);
    }

    @Test
    void leavesNoSiteEmptyByASplit() {
        InstallId only = installs.commissioned(site, LocalDate.of(2020, 1, 2));

        MvcTestResult answer = post(
                "/sites/" + site + "/split",
                "name",
                "All of it",
                "on",
                "2026-03-01",
                "installs",
                only.value().toString());

        assertThat(answer).hasStatus(422);
        assertThat(text(answer)).contains("Leave at least one install at this site.");
        assertThat(siteOf(only)).isEqualTo(site.value());
    }

    @Test
    void splitsAPartOffWithItsInstallsAndPeople() {
        InstallId stays = installs.commissioned(site, LocalDate.of(2020, 1, 2));
        InstallId goes = installs.commissioned(site, LocalDate.of(2021, 1, 2));

        MvcTestResult answer = post(
                "/sites/" + site + "/split",
                "name",
                "Upper Quarter",
                "on",
                "2026-03-01",
                "installs",
                goes.value().toString());

        assertThat(answer).hasStatus3xxRedirection();
        String part = String.valueOf(answer.getResponse().getRedirectedUrl());
        assertThat(text(get(part))).contains("Upper Quarter", "Hana Quarterly");
        assertThat(siteOf(goes)).isEqualTo(UUID.fromString(part.substring("/sites/".length())));
        assertThat(siteOf(stays)).isEqualTo(site.value());
    }

    @Test
    @DisplayName("SEC-13 a part without name or installs is refused and what was typed stays")
    void sec13SplitOfNothing() {
        installs.commissioned(site, LocalDate.of(2020, 1, 2));
        MvcTestResult answer = post("/sites/" + site + "/split", "name", "Upper Quarter", "on", "2026-03-01");

        assertThat(answer).hasStatus(422);
        assertThat(text(answer)).contains("Upper Quarter", "2026-03-01");
        assertThat(post("/sites/" + site + "/split", "name", " ", "on", "")).hasStatus(422);
    }

    @Test
    void mergesASiteThatWasRegisteredTwice() {
        SiteId twice = sites.named("Quarter Flatt");
        InstallId install = installs.commissioned(twice, LocalDate.of(2020, 1, 2));

        assertThat(text(get("/sites/" + twice + "/merge"))).contains("Quarter Flat</");
        assertThat(post("/sites/" + twice + "/merge", "kept", site.toString())).hasStatus3xxRedirection();

        assertThat(siteOf(install)).isEqualTo(site.value());
        assertThat(get("/sites/" + twice).getResponse().getRedirectedUrl()).isEqualTo("/sites/" + site);
    }

    @Test
    void mergesACustomerWhoWasRegisteredTwice() {
        CustomerId twice = customers.named("Hana Quartely");

        assertThat(post("/customers/" + seller + "/merge", "kept", twice.toString()))
                .hasStatus3xxRedirection();

        assertThat(parties()).containsExactly(twice.value() + " null null");
        assertThat(get("/customers/" + seller).getResponse().getRedirectedUrl()).isEqualTo("/customers/" + twice);
    }

    @Test
    @DisplayName("SEC-63 a technician sells, splits and merges nothing")
    void sec63TechnicianMayNot() {
        for (String step : List.of("sell", "split", "merge")) {
            assertThat(mvc.post()
                            .uri("/sites/" + site + "/" + step)
                            .param("kept", site.toString())
                            .with(user(PageTest.As.who(clerk, Role.TECHNICIAN)))
                            .with(csrf())
                            .exchange())
                    .as(step)
                    .hasStatus(403);
        }
    }

    @Test
    void aMergeIntoItselfIsRefused() {
        assertThat(post("/sites/" + site + "/merge", "kept", site.toString())).hasStatus(409);
    }

    private List<String> parties() {
        return jdbc.sql(
                        "select customer_id, from_date, until_date from site_parties where site_id = ? order by from_date nulls first")
                .param(site.value())
                .query((row, n) -> row.getString(1) + " " + row.getString(2) + " " + row.getString(3))
                .list();
    }

    private UUID siteOf(InstallId install) {
        return jdbc.sql("select site_id from installs where id = ?")
                .param(install.value())
                .query(UUID.class)
                .single();
    }

    private MvcTestResult get(String path) {
        return mvc.get()
                .uri(path)
                .with(user(PageTest.As.who(clerk, Role.OFFICE)))
                .exchange();
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(clerk, Role.OFFICE)))
                .with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    private static String text(MvcTestResult answer) {
        return new String(answer.getResponse().getContentAsByteArray(), StandardCharsets.UTF_8);
    }
}
