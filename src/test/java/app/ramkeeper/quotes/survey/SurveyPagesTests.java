package app.ramkeeper.quotes.survey;

import static app.ramkeeper.quotes.survey.Surveyed.body;
import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Uuids;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
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

/** A survey is kept as it is typed, whatever is wrong with it, and says beside the field what is. */
@SpringBootTest
@AutoConfigureMockMvc
@Import(TestDatabase.class)
class SurveyPagesTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    private Surveyed surveyed;

    @BeforeEach
    void start() {
        surveyed = new Surveyed(mvc, jdbc);
    }

    @Test
    void showsEachPage() {
        String enquiry = surveyed.enquiry();
        String survey = surveyed.survey(Surveyed.complete());

        for (String path : new String[] {
            "/enquiries",
            "/enquiries?state=LOST",
            "/enquiries/new",
            enquiry,
            enquiry + "/edit",
            survey,
            survey + "?check=yes"
        }) {
            MvcTestResult page = surveyed.get(path, Role.OFFICE);
            assertThat(page).as(path).hasStatusOk();
            assertThat(body(page)).as(path).contains("<h1").doesNotContain("??");
        }
    }

    @Test
    void whatIsNotThereIsMissing() {
        for (String path : new String[] {"/enquiries/", "/surveys/", "/surveys/photos/"}) {
            assertThat(surveyed.get(path + Uuids.next(), Role.OFFICE)).hasStatus(404);
        }
    }

    @DisplayName("SEC-63 lets a technician survey, but not take enquiries down")
    @Test
    void sec63TechnicianSurveysOnly() {
        String survey = surveyed.survey();

        assertThat(surveyed.get(survey, Role.TECHNICIAN)).hasStatusOk();
        assertThat(surveyed.get("/enquiries/new", Role.TECHNICIAN)).hasStatus(403);
        assertThat(surveyed.get(survey, Role.ADMINISTRATOR)).hasStatus(403);
    }

    @Test
    void keepsADraftAndGoesOn() {
        Map<String, String> typed =
                Map.of("fallM", "4.2 or so", "note", "gate code in the book", "demand[0].count", "4");

        String survey = surveyed.survey(typed);
        String page = body(surveyed.get(survey, Role.TECHNICIAN));

        assertThat(page)
                .contains("value=\"4.2 or so\"", "gate code in the book")
                .doesNotContain("error-summary");
    }

    @ParameterizedTest
    @CsvSource({
        "fallM, -2, 'The fall cannot be -2 m'",
        "fallM, '', 'Give the fall.'",
        "driveLengthM, -18, 'The length of the drive pipe cannot be -18 m'",
        "demandMore, -5, 'The other demand cannot be -5 l/day'",
        "givenLMin, -100, 'The flow of the source cannot be -100 l/min'",
        "givenLMin, 1e9, 'Give a number, for example 4.2.'",
        "liftM, 4, 'The lift of 4 m is not above the fall of 5 m'",
        "deliveryLengthM, -1, 'The length of the delivery line cannot be -1 m'",
        "mustStayLMin, -1, 'The water that must stay cannot be -1 l/min'",
        "waterC, 99, 'The temperature of the water cannot be 99 degC'",
        "position, somewhere, 'This position cannot be read.'",
        "walkMinutes, 700, 'The way on foot cannot be 700 min'",
        "easementOn, 2026-02-30, 'Give a date'",
        "mostPumps, 40, 'The most pumps cannot be 40'",
        "surveyedOn, 2026-02-30, 'Give a date'"
    })
    void saysWhatCannotBeBesideTheField(String field, String value, String sentence) {
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put(field, value);
        String survey = surveyed.survey();

        MvcTestResult refused = surveyed.save(survey, typed, "designs", "yes");

        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains(sentence, "href=\"#" + field + "\"", "id=\"" + field + "-error\"");
        assertThat(surveyed.typed(survey, field)).isEqualTo(value);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 0;50 12;40 20;300 40 | Line 3: the chainage 40 m is not more than the one before, 50 m.",
                "0 0;50 12;50 20 | Line 3: the chainage 50 m is not more than the one before, 50 m.",
                "0 0 | A profile needs two points or more",
                "0 0;50 | Line 2, “50”: give two numbers",
                "0 0;fifty 12 | Line 2, “fifty 12”: give two numbers",
                "0 0;100 3 | The lift of 3 m is not above the fall of 5 m"
            })
    void refusesAProfileThatCannotBe(String lines, String sentence) {
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put("profile", lines.replace(';', '\n'));
        String survey = surveyed.survey();

        MvcTestResult refused = surveyed.save(survey, typed, "designs", "yes");

        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains(sentence, "id=\"profile-error\"");
        assertThat(surveyed.typed(survey, "profile")).isEqualTo(lines.replace(';', '\n'));
    }

    @Test
    void refusesTenThousandPointsAndKeepsThem() {
        String points =
                IntStream.range(0, 10_000).mapToObj(i -> i + "\t" + i / 100.).collect(Collectors.joining("\n"));
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put("profile", points);
        String survey = surveyed.survey();

        MvcTestResult refused = surveyed.save(survey, typed, "designs", "yes");

        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains("10,000 points are more than the 300 that fit");
        assertThat(surveyed.typed(survey, "profile")).isEqualTo(points);
    }

    @Test
    void readsAProfileAsPastedFromASpreadsheet() {
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put("profile", "chainage\tlevel\n10\t100,5\n60\t112,25\n310\t135");

        assertThat(surveyed.save(surveyed.survey(), typed, "designs", "yes")).hasStatus3xxRedirection();
    }

    @Test
    void readsAProfileFromATrack() {
        String track = """
                <?xml version="1.0"?><gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>
                <trkpt lat="-45.0" lon="169.0"><ele>200</ele></trkpt><trkpt lat="-45.001" lon="169.0"><ele>215</ele></trkpt>
                <trkpt lat="-45.002" lon="169.0"><ele>240</ele></trkpt></trkseg></trk></gpx>""";
        String survey = surveyed.survey();

        MvcTestResult read = surveyed.upload(
                survey, "track", "walk.gpx", track.getBytes(StandardCharsets.UTF_8), Map.of("note", "walked twice"));

        // a thousandth of a degree of latitude at 45 degrees south is 111.1 m (WGS 84)
        assertThat(read).hasStatusOk();
        assertThat(surveyed.typed(survey, "profile")).isEqualTo("0\t200\n111.1\t215\n222.3\t240");
        assertThat(surveyed.typed(survey, "note")).isEqualTo("walked twice");
        assertThat(surveyed.typed(survey, "position")).isEqualTo("-45.000000, 169.000000");
        assertThat(surveyed.typed(survey, "altitudeM")).isEqualTo("200");
    }

    @DisplayName("SEC-11 refuses a track that is none, or names outside files")
    @ParameterizedTest
    @ValueSource(
            strings = {
                "no xml at all",
                "<!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><gpx version=\"1.1\" creator=\"&x;\"/>",
                "<gpx version=\"1.1\" creator=\"t\" xmlns=\"http://www.topografix.com/GPX/1/1\"></gpx>"
            })
    void sec11RefusesATrackThatIsNone(String content) {
        String survey = surveyed.survey(Map.of("profile", "0 0\n100 30"));

        MvcTestResult refused = surveyed.upload(
                survey,
                "track",
                "walk.gpx",
                content.getBytes(StandardCharsets.UTF_8),
                Map.of("profile", "0 0\n100 30"));

        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains("id=\"track-error\"").doesNotContain("root:");
        assertThat(surveyed.typed(survey, "profile")).isEqualTo("0 0\n100 30");
    }

    @Test
    void keepsWhileTypingAndShowsTheNewVersion() {
        String survey = surveyed.survey();
        Map<String, String> typed = new LinkedHashMap<>(Map.of("fallM", "3.5"));
        typed.put("version", "0");

        MvcTestResult live = surveyed.post(survey + "/live", Role.TECHNICIAN, typed);

        assertThat(live).hasStatusOk();
        assertThat(body(live)).contains("Kept as typed.", "value=\"1\"", "missing or cannot be");
        assertThat(surveyed.typed(survey, "fallM")).isEqualTo("3.5");
    }

    @DisplayName("SYN-10 shows both texts to the second writer and loses neither")
    @Test
    void syn10ShowsBothTextsToTheSecondWriter() {
        String survey = surveyed.survey(Map.of("fallM", "3.5"));

        MvcTestResult lost = surveyed.save(survey, Map.of("fallM", "3.9"), "version", "0");

        assertThat(lost).hasStatus(409);
        assertThat(body(lost)).contains("lost-update", "3.9", "3.5");
        assertThat(surveyed.typed(survey, "fallM")).isEqualTo("3.5");
        assertThat(surveyed.save(survey, Map.of("fallM", "3.9"))).hasStatus3xxRedirection();
    }

    @Test
    void measuresAgainWithTheSamePlaceButOtherWater() {
        String survey = surveyed.survey(Surveyed.complete());

        String next = surveyed.post(survey + "/again", Role.OFFICE, Map.of())
                .getResponse()
                .getRedirectedUrl();

        assertThat(surveyed.typed(next, "fallM")).isEqualTo("5");
        assertThat(surveyed.typed(next, "givenLMin")).isEmpty();
    }

    @DisplayName("SEC-13 survives NUL bytes, direction controls and names a megabyte long")
    @Test
    void sec13SurvivesHostileText() {
        String survey = surveyed.survey();

        assertThat(surveyed.save(survey, Map.of("note", "a\u0000b\u202Ec"))).hasStatus(422);
        assertThat(surveyed.typed(survey, "note")).isEqualTo("abc");
        assertThat(surveyed.save(survey, Map.of("n".repeat(1_000_000), "x", "note", "y")))
                .hasStatus3xxRedirection();
        assertThat(surveyed.post(
                        "/enquiries/new",
                        Role.OFFICE,
                        Map.of("customerName", "x".repeat(1_000_000), "place", "p", "receivedOn", "2026-01-05")))
                .hasStatus(422);
    }

    @Test
    void saysWhatAnEnquiryLacks() {
        MvcTestResult refused = surveyed.post(
                "/enquiries/new", Role.OFFICE, Map.of("customerName", "", "receivedOn", "2999-01-01", "note", "kept"));

        assertThat(refused).hasStatus(422);
        assertThat(body(refused))
                .contains(
                        "Give the name of the customer.",
                        "This date lies in the future.",
                        "Find the site, or say in words where it is.",
                        "kept");
    }

    @Test
    void anEnquiryIsLostOnlyWithAReason() {
        String enquiry = surveyed.enquiry();

        assertThat(surveyed.post(enquiry + "/state", Role.OFFICE, Map.of("state", "LOST", "reason", " ")))
                .hasStatus(422);
        assertThat(surveyed.post(enquiry + "/state", Role.OFFICE, Map.of("state", "LOST", "reason", "dear")))
                .hasRedirectedUrl(enquiry);
        assertThat(body(surveyed.get(enquiry, Role.OFFICE))).contains("lost", "dear");
    }

    /** Worked by hand: soundings of 0.30 m2, 10 m in 50 s, 0.85: 0.051 m3/s, or 3060 l/min. */
    @Test
    void measuresAStreamByFloats() {
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put("method", "FLOAT");
        typed.put("floatDistanceM", "10");
        typed.put("floatSeconds", "48 52; 50,0");
        typed.put("floatSection", "0 0\n0.5 0.2\n1 0,3\n1.5 0.1\n2 0");
        String enquiry = surveyed.enquiry();
        String survey = surveyed.post(enquiry + "/surveys", Role.TECHNICIAN, Map.of())
                .getResponse()
                .getRedirectedUrl();

        assertThat(surveyed.save(survey, typed, "designs", "yes")).hasStatus3xxRedirection();
        assertThat(body(surveyed.get(enquiry, Role.OFFICE))).contains("3060 l/min");
    }

    @ParameterizedTest
    @CsvSource({
        "floatDistanceM, 0, The length of the reach cannot be 0 m",
        "floatSeconds, '', Give the times of the floats",
        "floatSeconds, fifty, “fifty” is no number",
        "floatSeconds, 0 50, Each float takes from 1 to 3600 s",
        "floatSection, 0 0, Give two soundings or more",
        "floatSection, '1 0.2|0.5 0.3', 'Line 2, “0.5 0.3”: give the distance from the bank'",
        "floatSection, '0 0|2 0', All depths are zero",
        "floatFactor, 2, The velocity factor cannot be 2"
    })
    void saysWhatIsWrongWithFloats(String field, String value, String sentence) {
        Map<String, String> typed = new LinkedHashMap<>(Surveyed.complete());
        typed.put("method", "FLOAT");
        typed.put("floatDistanceM", "10");
        typed.put("floatSeconds", "48 52 50");
        typed.put("floatSection", "0 0\n1 0.3\n2 0");
        typed.put(field, value.replace('|', '\n'));
        String survey = surveyed.survey();

        MvcTestResult refused = surveyed.save(survey, typed, "designs", "yes");

        assertThat(refused).hasStatus(422);
        assertThat(body(refused)).contains(sentence, "id=\"" + field + "-error\"");
    }

    @Test
    void picksAKnownCustomerByHalfAName() {
        UUID known = Uuids.next();
        jdbc.sql("insert into customers (id, name, phone) values (?, 'Wilhelmina Thornbury', '00 555 0123')")
                .param(known)
                .update();

        assertThat(surveyed.get("/enquiries/customers?customerName=wilhelmna", Role.OFFICE))
                .hasStatusOk()
                .bodyText()
                .contains("Wilhelmina Thornbury", known.toString(), "Somebody new");
        assertThat(surveyed.post("/enquiries/new", Role.OFFICE, Map.of("customerName", "wilhelmna", "find", "yes")))
                .bodyText()
                .contains("Wilhelmina Thornbury");
        Map<String, String> typed = new LinkedHashMap<>(
                Map.of("customerName", "W. Thornbury", "place", "Dell", "receivedOn", "2026-01-05"));
        typed.put("customer", Uuids.next().toString());
        assertThat(surveyed.post("/enquiries/new", Role.OFFICE, typed))
                .hasStatus(422)
                .bodyText()
                .contains("There is no such customer any more");
        typed.put("customer", known.toString());
        String enquiry = surveyed.post("/enquiries/new", Role.OFFICE, typed)
                .getResponse()
                .getRedirectedUrl();
        assertThat(body(surveyed.get(enquiry, Role.OFFICE))).contains("/customers/" + known);
    }
}
