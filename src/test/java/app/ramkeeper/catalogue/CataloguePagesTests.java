package app.ramkeeper.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
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
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The pages of the catalogue keep what was typed and say what is wrong with it. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
@Transactional
class CataloguePagesTests {

    private static final String RUBBER = "/task-kinds/01900000-0000-7000-8000-000000000002";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/parts",
                "/parts/new",
                "/pump-models",
                "/pump-models/new",
                "/task-kinds",
                "/task-kinds/new",
                RUBBER
            })
    void shows(String path) throws Exception {
        MvcTestResult page = get(path, Role.ADMINISTRATOR);

        assertThat(page).hasStatusOk();
        assertThat(body(page)).contains("<h1>").doesNotContain("??");
    }

    @Test
    @DisplayName("SEC-13 a form of which one field cannot be read and another breaks a rule of its own stays as typed")
    void sec13KeepsAFormWithAnUnreadableFieldBesideABrokenRule() throws Exception {
        MvcTestResult page = post(
                "/task-kinds/new",
                Role.ADMINISTRATOR,
                "minutes",
                "long",
                "skills",
                "NONSENSE",
                "description",
                "Part kept",
                "_drinkingWater",
                "on",
                "_watched",
                "on");

        assertThat(page).hasStatus(422);
        assertThat(body(page)).contains("value=\"long\"", "Part kept", "NONSENSE");
    }

    @ParameterizedTest
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    @ValueSource(strings = {"/parts/", "/pump-models/", "/task-kinds/"})
    void whatIsNotThereIsMissing(String path) {
        assertThat(get(path + Uuids.next(), Role.ADMINISTRATOR)).hasStatus(404);
    }

    @DisplayName("SEC-13 refuses a technician the pages of the catalogue")
    @ParameterizedTest
    @ValueSource(strings = {"/parts", "/pump-models", "/task-kinds", RUBBER, "/parts/new"})
    void sec13RefusesATechnician(String path) {
        assertThat(get(path, Role.TECHNICIAN)).hasStatus(403);
        assertThat(post(path, Role.TECHNICIAN).getResponse().getStatus()).isIn(403, 405);
    }

    @Test
    void addsAndChangesAPart() throws Exception {
        String number = "R-" + Uuids.next();
        assertThat(post(
                        "/parts/new",
                        Role.ADMINISTRATOR,
                        "number",
                        number,
                        "name",
                        "Rubber",
                        "unit",
                        "piece",
                        "kind",
                        "SEAL"))
                .hasRedirectedUrl("/parts");
        assertThat(body(get(partPath(number), Role.ADMINISTRATOR))).contains(number, "Rubber");
        assertThat(post(
                        partPath(number),
                        Role.ADMINISTRATOR,
                        "number",
                        number,
                        "name",
                        "Ring",
                        "unit",
                        "piece",
                        "kind",
                        "SEAL",
                        "version",
                        "0"))
                .hasRedirectedUrl("/parts");
        assertThat(body(get("/parts", Role.ADMINISTRATOR))).contains("Ring");
    }

    @DisplayName("SYN-10 a lost update of a part shows both texts")
    @Test
    void syn10ShowsBothTexts() throws Exception {
        String number = "R-" + Uuids.next();
        post("/parts/new", Role.ADMINISTRATOR, "number", number, "name", "Theirs", "unit", "piece", "kind", "SEAL");

        MvcTestResult page = post(
                partPath(number),
                Role.ADMINISTRATOR,
                "number",
                number,
                "name",
                "Mine",
                "unit",
                "piece",
                "kind",
                "SEAL",
                "version",
                "77");

        assertThat(page).hasStatus(409);
        assertThat(body(page)).contains("Theirs", "value=\"Mine\"");
    }

    @ParameterizedTest
    @CsvSource({
        "/parts/new, number, '', Part kept",
        "/parts/new, kind, NOSUCH, Part kept",
        "/pump-models/new, name, '', Part kept",
        "/pump-models/new, massKg, heavy, heavy",
        "/pump-models/new, vesselKind, NOSUCH, Part kept",
        "/task-kinds/new, minutes, long, long",
        "/task-kinds/new, seasonDay, 99, Part kept"
    })
    void keepsWhatWasTyped(String path, String field, String typed, String expected) throws Exception {
        String kept = path.contains("parts") ? "unit" : path.contains("models") ? "notes" : "description";
        MvcTestResult page = post(
                path,
                Role.ADMINISTRATOR,
                field,
                typed,
                kept,
                "Part kept",
                "_drinkingWaterFit",
                "on",
                "_snifter",
                "on",
                "_watched",
                "on",
                "_drinkingWater",
                "on");

        assertThat(page).hasStatus(422);
        assertThat(body(page)).contains(expected, "Part kept", "error-summary");
    }

    @Test
    void saysTheFieldsOwnSentenceBeforeTheGeneralOne() throws Exception {
        MvcTestResult page = post(
                "/parts/new", Role.ADMINISTRATOR, "number", " ", "name", "x".repeat(121), "_drinkingWaterFit", "on");

        assertThat(page).hasStatus(422);
        assertThat(body(page)).contains("Give the part a number.", "At most 120 characters.");
    }

    @Test
    void refusesAPointThatGivesMoreEnergyThanItTakes() throws Exception {
        MvcTestResult page = post(
                "/pump-models/new",
                Role.ADMINISTRATOR,
                "name",
                "Model " + Uuids.next(),
                "vesselKind",
                "NONE",
                "performance[0].fallM",
                "2",
                "performance[0].liftM",
                "20",
                "performance[0].driveFlowLMin",
                "60",
                "performance[0].deliveredLMin",
                "7");

        assertThat(page).hasStatus(422);
        assertThat(body(page)).contains("more energy than the fall gives", "value=\"60\"");
    }

    @Test
    void keepsEveryRowOfAModelWhenANumberCannotBeRead() throws Exception {
        String name = "Model " + Uuids.next();
        MvcTestResult page = post(
                "/pump-models/new",
                Role.ADMINISTRATOR,
                "name",
                name,
                "vesselKind",
                "AIR_CHAMBER",
                "_snifter",
                "on",
                "fallMinM",
                "about two",
                "performance[0].fallM",
                "2.5",
                "performance[0].liftM",
                "21",
                "performance[1].fallM",
                "three",
                "performance[1].liftM",
                "33",
                "parts[0].position",
                "waste valve",
                "parts[0].quantity",
                "2,5 or so");

        assertThat(page).hasStatus(422);
        assertThat(body(page))
                .contains(name, "about two", "value=\"2.5\"", "value=\"21\"", "value=\"three\"", "value=\"33\"")
                .contains("value=\"waste valve\"", "2,5 or so", "fallMinM-error", "performance-1-fallM-error")
                .contains("<option value=\"AIR_CHAMBER\" selected");
    }

    @Test
    void saysWhatCannotBeReadAndWhatIsUnknownInOneRound() throws Exception {
        MvcTestResult page =
                post(RUBBER, Role.ADMINISTRATOR, "name", "Kept", "intervalMonths", "1,5", "skills", "NONSENSE");

        assertThat(page).hasStatus(422);
        assertThat(body(page))
                .contains("id=\"intervalMonths-error\"", "value=\"1,5\"")
                .contains("Not known: NONSENSE.", "value=\"NONSENSE\"", "Kept");
    }

    @Test
    void namesTheKnownSkillsBesideAnUnknownOne() throws Exception {
        MvcTestResult page =
                post("/task-kinds/new", Role.ADMINISTRATOR, "skills", "lifting, nonsense", "description", "Part kept");

        assertThat(page).hasStatus(422);
        assertThat(body(page))
                .contains("id=\"skills-error\"", "Not known: NONSENSE.", "CONFINED_SPACE, FIRST_AID, LIFTING")
                .contains("value=\"lifting, nonsense\"", "Part kept");
    }

    @Test
    void previewSaysWhatMovesAndSavesNothing() throws Exception {
        Integer version = jdbc.sql("select version from task_kinds where code = 'CHANGE_DELIVERY_RUBBER'")
                .query(Integer.class)
                .single();
        MvcTestResult page = post(
                RUBBER,
                Role.ADMINISTRATOR,
                "step",
                "preview",
                "version",
                version.toString(),
                "name",
                "Another name",
                "scope",
                "PUMP",
                "schedule",
                "INTERVAL",
                "life",
                "RUNNING",
                "intervalMonths",
                "7",
                "intervalDays",
                "0",
                "earlyDays",
                "30",
                "lateDays",
                "30",
                "graceDays",
                "14",
                "minutes",
                "30",
                "crew",
                "1",
                "weight",
                "1");

        assertThat(page).hasStatusOk();
        assertThat(body(page)).contains("What this change moves", "Nothing is saved yet", "value=\"7\"");
        assertThat(body(get("/task-kinds", Role.ADMINISTRATOR))).doesNotContain("Another name");
    }

    private String partPath(String number) {
        return "/parts/"
                + jdbc.sql("select id from parts where number = ?")
                        .param(number)
                        .query(java.util.UUID.class)
                        .single();
    }

    private MvcTestResult get(String path, Role role) {
        return mvc.get().uri(path).with(user(as(role))).exchange();
    }

    private MvcTestResult post(String path, Role role, String... params) {
        var request = mvc.post().uri(path).with(user(as(role))).with(csrf());
        for (int i = 0; i < params.length; i += 2) {
            request = request.param(params[i], params[i + 1]);
        }
        return request.exchange();
    }

    private static String body(MvcTestResult page) throws Exception {
        return page.getResponse().getContentAsString();
    }

    private static CurrentUser as(Role role) {
        return new CurrentUser(Uuids.next(), Uuids.next(), "login", "Somebody", Set.of(role), null);
    }
}
