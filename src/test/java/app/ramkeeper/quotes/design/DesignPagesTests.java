package app.ramkeeper.quotes.design;

import static app.ramkeeper.quotes.survey.Surveyed.body;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.Role;
import app.ramkeeper.quotes.survey.Surveyed;
import app.ramkeeper.shared.Uuids;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
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
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** What fits is shown with what arrives, what does not says why, and a broken rule is accepted only with a reason. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
@Transactional
class DesignPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    private Surveyed surveyed;
    private UUID pump;
    private UUID drive;
    private UUID pipe;

    @BeforeEach
    void supply() {
        surveyed = new Surveyed(mvc, jdbc);
        if (!TransactionSynchronizationManager.isActualTransactionActive()) {
            return;
        }
        jdbc.sql("delete from prices").update();
        Supplied supplied = new Supplied(jdbc);
        pump = supplied.pump(5, 30, 0.6);
        drive = supplied.pipe("DRIVE", "GALVANISED_STEEL", 88.9, 4, 25, "58.50");
        pipe = supplied.pipe("DELIVERY", "PE100", 32, 3, 16, "2.82");
    }

    @Test
    void leadsWithWhatArrivesInADryMonth() {
        String survey = surveyed.survey(Surveyed.complete());

        String page = body(surveyed.get(survey + "/designs", Role.OFFICE));

        assertThat(page)
                .containsPattern("<strong>\\d+ to \\d+ litres a day</strong>")
                .doesNotContain("??");
        assertThat(page.indexOf("litres a day")).isLessThan(page.indexOf("<svg class=\"plot\""));
        assertThat(page).contains("/designs/try?pump=" + pump, "The same designs in figures");
    }

    @Test
    void saysAsOneTypesWhatItComesTo() {
        String survey = surveyed.survey();
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put("version", "0");

        String live = body(surveyed.post(survey + "/live", Role.TECHNICIAN, typed));

        assertThat(live)
                .containsPattern("\\d+ to \\d+ litres a day")
                .contains("in a dry month")
                .doesNotContain("58.50");
    }

    @ParameterizedTest
    @CsvSource({
        "givenLMin, 8, 'There is not enough water times fall. 8 l/min falling 5 m cannot lift more than 1920 l/day to 30 m'",
        "givenLMin, 12, 'a good pump brings some 1728'",
        "fallM, 20, 'The fall of 20 m is outside its 2.5 to 7.5 m'",
        "mustStayLMin, 100, 'In the dry month nothing is left to take'"
    })
    void saysWhyNotWithARam(String field, String value, String because) {
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put(field, value);
        String survey = surveyed.survey(typed);

        String page = body(surveyed.get(survey + "/designs", Role.OFFICE));

        assertThat(page).contains("Not with a ram, because", because).doesNotContain("??");
    }

    @Test
    void promisesNothingOfMoreWaterWhereNoPumpLiftsThatHigh() {
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put("liftM", "300");

        String page = body(surveyed.get(surveyed.survey(typed) + "/designs", Role.OFFICE));

        assertThat(page)
                .contains("No pump of the catalogue lifts to 300 m")
                .doesNotContain("What would make it possible");
    }

    @Test
    void sendsAnIncompleteSurveyBackToItsForm() {
        String survey = surveyed.survey(Map.of("fallM", "3"));

        assertThat(surveyed.get(survey + "/designs", Role.OFFICE)).hasRedirectedUrl(survey + "?check=yes");
        assertThat(body(surveyed.get(survey + "?check=yes", Role.OFFICE)))
                .contains("error-summary", "driveLengthM-error");
    }

    @Test
    void aBrokenRuleNeedsAReasonThatIsKept() {
        String survey = surveyed.survey(Surveyed.complete());
        UUID weak = new Supplied(jdbc).pipe("DELIVERY", "PE100", 32, 2, 2, "1.10");
        Map<String, String> choice = choice(weak);

        MvcTestResult refused = surveyed.post(survey + "/designs", Role.OFFICE, choice);
        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains("Say why this is accepted", "id=\"why0-error\"");

        for (int i = 0; i < 6; i++) {
            choice.put("why" + i, "Reason " + i + ": kept for a trial week");
        }
        String design = surveyed.post(survey + "/designs", Role.OFFICE, choice)
                .getResponse()
                .getRedirectedUrl();
        assertThat(body(surveyed.get(design, Role.OFFICE)))
                .contains("does not hold", "Reason 0: kept for a trial week", "Make a quote from it")
                .doesNotContain("??");
    }

    @Test
    void aVesselTooWeakForThePressureIsABrokenRule() {
        String tried = surveyed.survey(Surveyed.complete()) + "/designs/try?pump=" + pump + "&pumps=1&drive=" + drive
                + "&pipe0=" + pipe + "&to0=300";
        Supplied supplied = new Supplied(jdbc);
        supplied.vessel(500, 1.5);

        assertThat(body(surveyed.get(tried, Role.OFFICE)))
                .containsPattern("Pressure vessel: none of the catalogue holds \\d+ l and bears \\d+\\.\\d bar");

        supplied.vessel(500, 60);
        assertThat(body(surveyed.get(tried, Role.OFFICE)))
                .contains("Pressure on the pump")
                .doesNotContain("none of the catalogue");
    }

    @Test
    void aSurveyStaysAsItIsOnceADesignIsChosen() {
        String survey = surveyed.survey(Surveyed.complete());
        surveyed.post(survey + "/designs", Role.OFFICE, choice(pipe));

        assertThat(surveyed.save(survey, Map.of("fallM", "1"))).hasStatus(409);
        assertThat(surveyed.typed(survey, "fallM")).isEqualTo("5");
        assertThat(body(surveyed.get(survey, Role.TECHNICIAN))).contains("A design was chosen on this survey");
    }

    @ParameterizedTest
    @CsvSource({
        "pumps, 0, From 1 to 12 pumps",
        "pumps, 2000000000, From 1 to 12 pumps",
        "pump, 01a00000-0000-7000-8000-000000000000, Choose a pump that has a price today.",
        "drive, nonsense, Choose one from the list.",
        "to0, 120, 'The last stretch must end at 300 m, at the tank.'",
        "to0, -5, 'This stretch must end beyond 0 m'",
        "to0, 400, 'at most at 300 m'",
        "pipe0, '', Choose a delivery pipe"
    })
    void saysWhatCannotBeInAnAlteredDesign(String field, String value, String sentence) {
        String survey = surveyed.survey(Surveyed.complete());
        Map<String, String> choice = choice(pipe);
        choice.put(field, value);

        MvcTestResult refused = surveyed.post(survey + "/designs", Role.OFFICE, choice);

        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains(sentence);
    }

    @DisplayName("SEC-63 keeps designs and their prices from technicians")
    @Test
    void sec63TechniciansSeeNoDesigns() {
        String survey = surveyed.survey(Surveyed.complete());

        assertThat(surveyed.get(survey + "/designs", Role.TECHNICIAN)).hasStatus(403);
        assertThat(surveyed.get(survey + "/designs/try", Role.TECHNICIAN)).hasStatus(403);
        assertThat(surveyed.get("/designs/" + Uuids.next(), Role.TECHNICIAN)).hasStatus(403);
    }

    @Test
    @Transactional(propagation = Propagation.NOT_SUPPORTED)
    void whatIsNotThereIsMissing() {
        for (String path : new String[] {"/designs/%s", "/surveys/%s/designs", "/surveys/%s/designs/try"}) {
            assertThat(surveyed.get(path.formatted(Uuids.next()), Role.OFFICE)).hasStatus(404);
        }
    }

    private Map<String, String> choice(UUID delivery) {
        Map<String, String> choice = new LinkedHashMap<>();
        choice.put("pump", pump.toString());
        choice.put("pumps", "1");
        choice.put("drive", drive.toString());
        choice.put("pipe0", delivery.toString());
        choice.put("to0", "300");
        return choice;
    }
}
