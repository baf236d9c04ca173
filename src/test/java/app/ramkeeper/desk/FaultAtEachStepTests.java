package app.ramkeeper.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.fleet.Customers;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.Recorded;
import app.ramkeeper.visits.Reports;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.VisitRecorder;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.visits.files.Photos;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/** Whatever statement fails, a visit is recorded as a whole or not at all; photos are rows of the same database. */
@SpringBootTest
@AutoConfigureMockMvc
@Import({TestDatabase.class, CountedStatements.class, Customers.class, Sites.class, Installs.class, FieldPeople.class})
@WithMockUser(roles = {"TECHNICIAN", "OFFICE"})
class FaultAtEachStepTests {

    private static final int MOST_STEPS = 200;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Visits visits;

    @Autowired
    Photos photos;

    @Autowired
    Catalogue catalogue;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    JsonMapper json;

    @Autowired
    Clock clock;

    private SiteId site;
    private InstallId install;
    private PersonId ada;
    private VisitId planned;
    private LocalDate today;

    @BeforeEach
    void somebodyWithAVan() {
        today = LocalDate.now(clock);
        transaction.executeWithoutResult(status -> {
            site = sites.named("Faulty block " + UUID.randomUUID());
            install = installs.commissioned(site, today.minusYears(3));
            ada = people.named("Ada " + UUID.randomUUID());
            planned =
                    visits.plan(new PlanVisit(site, VisitKind.SERVICE, today, null, 45, List.of(ada), List.of(), null));
            jdbc.sql("insert into stock_places (id, kind, person_id, name) values (?, 'VAN', ?, ?)")
                    .params(Uuids.next(), ada.value(), "Van of " + ada.value())
                    .update();
        });
    }

    @Test
    @DisplayName(
            "FLT-05 SEC-18 let the first, the second, each statement and the commit fail: nothing stays, a retry works")
    void flt05FailureAtEachStep() throws IOException {
        RecordVisit report = fullReport();
        String before = contents();

        int failures = 0;
        while (failedAt(failures + 1, report)) {
            failures++;
            assertThat(contents()).as("after failure at step %d", failures).isEqualTo(before);
            assertThat(failures).isLessThan(MOST_STEPS);
        }

        assertThat(failures).as("steps of recording a visit").isGreaterThan(10);
        assertThat(contents()).isNotEqualTo(before);
        assertThat(recorder.record(report, ada)).isEqualTo(new Recorded.Applied(report.id(), true));
        assertThat(count("report_works where report_id = ?", report.id().value()))
                .isEqualTo(1);
        assertThat(count("photos where report_id = ?", report.id().value())).isEqualTo(1);
        assertThat(count(
                        "stock_movements where report_id = ? and reason = 'USED'",
                        report.id().value()))
                .isEqualTo(1);
        assertThat(count("visits where state = 'DONE' and id = ?", planned.value()))
                .isEqualTo(1);
    }

    /** Whether the n-th step came to be, and with it the whole to nothing. */
    private boolean failedAt(int n, RecordVisit report) {
        AtomicInteger step = new AtomicInteger();
        Throwable failure = catchThrowable(() ->
                CountedStatements.failing(sql -> step.incrementAndGet() == n, () -> recorder.record(report, ada)));
        assertThat(failure == null).as("step %d is there", n).isEqualTo(step.get() < n);
        return failure != null;
    }

    private RecordVisit fullReport() throws IOException {
        UUID part = Uuids.next();
        jdbc.sql("insert into parts (id, number, name, kind) values (?, ?, 'Rubber', 'VALVE_RUBBER')")
                .params(part, "R-" + part)
                .update();
        String photo = photos.keep(picture(), "gate.jpg", "image/jpeg", ada).sha256();
        return Reports.service(site, ada, today)
                .visit(planned)
                .done(
                        install,
                        catalogue.taskKind("CLEAN_STRAINER").orElseThrow().id())
                .reading(install, Quantity.DELIVERED_FLOW, MeasuredAt.TANK, "4.2", Unit.LITRE_PER_MINUTE)
                .finding(new RecordVisit.Finding(install, Symptom.LEAK_PUMP, null, "new seal"))
                .part(new RecordVisit.PartUsed(install, null, new PartId(part), null, null, BigDecimal.ONE, null))
                .photo(new RecordVisit.Photo(photo, "Gate", null))
                .note("All as usual")
                .build();
    }

    @Test
    @DisplayName(
            "SEC-18 when the last step of a phone's visit fails nothing of it remains, and sent again it is there once")
    void sec18LastStepOfAPhonesVisitFails() {
        UUID id = UUID.randomUUID();
        String before = contents();

        for (String last : List.of("insert into field_entries", CountedStatements.COMMIT)) {
            CountedStatements.failing(
                    sql -> sql.strip().startsWith(last),
                    () -> assertThat(words(id, 0)).as(last).hasStatus(503));
            assertThat(contents()).as(last).isEqualTo(before);
        }

        assertThat(words(id, 0))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.result")
                .isEqualTo("APPLIED");
        assertThat(count("visit_reports where id = ?", id)).isEqualTo(1);
    }

    @Test
    @DisplayName(
            "FLT-08 without room for a photo the visit's words are kept, no half row is left, and later the photo joins")
    void flt08NoRoomForAPhonesPhoto() throws IOException {
        UUID id = UUID.randomUUID();
        UUID photo = UUID.randomUUID();
        byte[] picture = picture();
        assertThat(words(id, 1)).hasStatusOk();
        String before = contents();

        CountedStatements.failing(
                this::keepsAPhoto,
                () -> assertThat(photo(photo, id, picture))
                        .hasStatus(503)
                        .bodyText()
                        .contains("no room for this photo"));

        assertThat(contents()).isEqualTo(before);
        assertThat(count("visit_reports where note = 'Strainer clean' and id = ?", id))
                .isEqualTo(1);
        assertThat(photo(photo, id, picture)).hasStatusOk();
        assertThat(count("photos where report_id = ?", id)).isEqualTo(1);
    }

    @Test
    @DisplayName("FLT-08 without room for a photo the desk's form comes back with what was typed and says so")
    void flt08NoRoomForADesksPhoto() throws IOException {
        MockMultipartFile file = new MockMultipartFile("photoFiles", "gate.jpg", "image/jpeg", picture());
        String before = contents();

        CountedStatements.failing(
                this::keepsAPhoto,
                () -> assertThat(mvc.post()
                                .uri("/sites/{id}/record", site.value())
                                .multipart()
                                .file(file)
                                .param("note", "Strainer cleared by hand")
                                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                                .with(csrf())
                                .exchange())
                        .hasStatus(422)
                        .bodyText()
                        .contains("Strainer cleared by hand", "no room for this photo"));

        assertThat(contents()).isEqualTo(before);
    }

    private boolean keepsAPhoto(String sql) {
        return sql.contains("insert into file_uploads");
    }

    private MvcTestResult words(UUID id, int photos) {
        String text = json.writeValueAsString(Map.of(
                "v",
                1,
                "id",
                id,
                "site",
                site.value(),
                "kind",
                "SERVICE",
                "on",
                today.toString(),
                "outcome",
                "DONE",
                "nobodyThere",
                true,
                "note",
                "Strainer clean",
                "photos",
                photos));
        return mvc.post()
                .uri("/field/entries")
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .contentType(MediaType.APPLICATION_JSON)
                .header("Idempotency-Key", id.toString())
                .content(json.writeValueAsString(Map.of(
                        "id",
                        id,
                        "person",
                        ada.value(),
                        "text",
                        text,
                        "hash",
                        sha256(text.getBytes(StandardCharsets.UTF_8)))))
                .exchange();
    }

    private MvcTestResult photo(UUID photo, UUID entry, byte[] content) {
        return mvc.post()
                .uri("/field/photos?entry={e}&hash={h}&caption=gate", entry, sha256(content))
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .header("Idempotency-Key", photo.toString())
                .contentType(MediaType.APPLICATION_OCTET_STREAM)
                .content(content)
                .exchange();
    }

    private long count(String rows, Object value) {
        return jdbc.sql("select count(*) from " + rows)
                .param(value)
                .query(Long.class)
                .single();
    }

    /** A sum over every row of every table, but for sessions and the jobs' clock. */
    private String contents() {
        String each = jdbc.sql("""
                        select string_agg(format('select %L as name, count(*) as rows, coalesce(sum(hashtextextended(t::text, 0)::numeric), 0) as sum from %I t', tablename, tablename), ' union all ')
                        from pg_tables where schemaname = 'public' and tablename not like 'spring_session%' and tablename <> 'scheduled_tasks'
                          and has_table_privilege(format('%I.%I', schemaname, tablename), 'select')""").query(String.class).single();
        return jdbc.sql("select string_agg(concat_ws(' ', name, rows, sum), chr(10) order by name) from (" + each
                        + ") all_of_it")
                .query(String.class)
                .single();
    }

    private static byte[] picture() throws IOException {
        BufferedImage pixels = new BufferedImage(30, 20, BufferedImage.TYPE_INT_RGB);
        pixels.setRGB(3, 3, (int) System.nanoTime());
        ByteArrayOutputStream picture = new ByteArrayOutputStream();
        ImageIO.write(pixels, "jpg", picture);
        return picture.toByteArray();
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (java.security.NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}
