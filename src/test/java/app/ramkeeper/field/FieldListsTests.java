package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** The office's lists for the phones: likely causes, and commissioning steps in editions. */
@PageTest
class FieldListsTests {

    private static final String NONE = Intake.sha256("");

    @Autowired
    MockMvcTester mvc;

    @Autowired
    FieldPeople people;

    @Autowired
    org.springframework.jdbc.core.simple.JdbcClient jdbc;

    private PersonId ada;

    @BeforeEach
    void make() {
        ada = people.named("Ada " + UUID.randomUUID());
    }

    private MvcTestResult post(String path, String... fields) {
        var request = mvc.post()
                .uri(path)
                .with(user(PageTest.As.who(ada, Role.OFFICE)))
                .with(csrf());
        for (int i = 0; i < fields.length; i += 2) {
            request = request.param(fields[i], fields[i + 1]);
        }
        return request.exchange();
    }

    @Test
    void officeWritesTheNextEdition() {
        assertThat(mvc.get().uri("/field-lists").with(user(PageTest.As.who(ada, Role.OFFICE))))
                .hasStatusOk()
                .bodyText()
                .contains("edition 1", "Likely causes");
        assertThat(post(
                        "/field-lists/commissioning",
                        "base",
                        "1",
                        "lines",
                        "Delivery open | hold\nWave at the sheep | picnic"))
                .hasStatus(422)
                .bodyText()
                .contains("Wave at the sheep | picnic", "only hold, pressure and settings");
        assertThat(post("/field-lists/commissioning", "base", "1", "lines", " \n"))
                .hasStatus(422)
                .bodyText()
                .contains("at least one step");
        assertThat(post("/field-lists/commissioning", "base", "1", "lines", "Delivery open | hold\nWave at the sheep"))
                .hasStatus3xxRedirection();
        assertThat(jdbc.sql("select items::text from field_checklists where edition = 2 and model_id is null")
                        .query(String.class)
                        .single())
                .contains("\"OPEN\"", "Wave at the sheep");
        assertThat(mvc.get().uri("/field/bundle").with(user(PageTest.As.who(ada, Role.TECHNICIAN))))
                .bodyText()
                .contains("Wave at the sheep")
                .doesNotContain("Setting locked");
    }

    @Test
    void modelGetsItsOwnListAndOthersKeepTheirs() {
        UUID model = UUID.randomUUID();
        jdbc.sql("insert into pump_models (id, name) values (:id, :name)")
                .param("id", model)
                .param("name", "Model " + model)
                .update();
        assertThat(post(
                        "/field-lists/commissioning",
                        "model",
                        model.toString(),
                        "base",
                        "0",
                        "lines",
                        "Bolts in the maker's order | hold | pressure"))
                .hasStatus3xxRedirection();
        assertThat(mvc.get().uri("/field-lists").with(user(PageTest.As.who(ada, Role.OFFICE))))
                .bodyText()
                .contains(
                        "Model " + model + ", edition 1",
                        "Bolts in the maker&#39;s order | hold | pressure",
                        "Setting locked");
        assertThat(mvc.get().uri("/field/bundle").with(user(PageTest.As.who(ada, Role.TECHNICIAN))))
                .bodyText()
                .contains("Bolts in the maker's order", "Setting locked");
    }

    @Test
    void causesAreWrittenAnewInTheirOrder() {
        assertThat(post("/field-lists/causes", "symptom", "FROZEN", "base", NONE, "lines", "no bar"))
                .hasStatus(422)
                .bodyText()
                .contains("no bar")
                .containsPattern("<details open=\"open\"><summary>Frozen \\(none\\)</summary>")
                .containsOnlyOnce("<details open");
        assertThat(mvc.get().uri("/field-lists").with(user(PageTest.As.who(ada, Role.OFFICE))))
                .bodyText()
                .contains("(14 lines)</summary>", "Source low or dry (1 line)</summary>")
                .doesNotContain("<details open");
        assertThat(post("/field-lists/causes", "symptom", "FROZEN", "base", NONE, "lines", "fr\u0007ost | x"))
                .hasStatus(400);
        assertThat(post(
                        "/field-lists/causes",
                        "symptom",
                        "FROZEN",
                        "base",
                        NONE,
                        "lines",
                        "Frost in the line | Thawed it slowly\nNo lagging | Lagged it"))
                .hasStatus3xxRedirection();
        assertThat(jdbc.sql("select cause from field_causes where symptom = 'FROZEN' order by seq")
                        .query(String.class)
                        .list())
                .containsExactly("Frost in the line", "No lagging");
        assertThat(post(
                        "/field-lists/causes",
                        "symptom",
                        "FROZEN",
                        "base",
                        Intake.sha256("Frost in the line | Thawed it slowly\nNo lagging | Lagged it"),
                        "lines",
                        " "))
                .hasStatus3xxRedirection();
        assertThat(jdbc.sql("select count(*) from field_causes where symptom = 'FROZEN'")
                        .query(Integer.class)
                        .single())
                .isZero();
        assertThat(post("/field-lists/causes", "symptom", "SINGING", "base", NONE, "lines", "a | b"))
                .hasStatus(400);
    }

    @Test
    @DisplayName("SYN-10 a list that somebody else saved meanwhile: both texts are shown, nothing is overwritten")
    void syn10SecondWriterSeesBoth() {
        post("/field-lists/causes", "symptom", "FROZEN", "base", NONE, "lines", "Frost in the line | Thawed it");
        assertThat(post("/field-lists/causes", "symptom", "FROZEN", "base", NONE, "lines", "My own frost | Waited"))
                .hasStatus(409)
                .bodyText()
                .contains("Frost in the line | Thawed it", "My own frost | Waited", "Somebody else saved");
        post("/field-lists/commissioning", "base", "1", "lines", "Wave at the sheep");
        assertThat(post("/field-lists/commissioning", "base", "1", "lines", "Count the sheep"))
                .hasStatus(409)
                .bodyText()
                .contains("Wave at the sheep", "Count the sheep");
        assertThat(jdbc.sql("select max(edition) from field_checklists where model_id is null")
                        .query(Integer.class)
                        .single())
                .isEqualTo(2);
    }
}
