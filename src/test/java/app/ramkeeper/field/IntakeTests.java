package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.fleet.Installs;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.Sites;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.FieldPeople;
import app.ramkeeper.visits.PageTest;
import app.ramkeeper.visits.ReportsToSettle;
import app.ramkeeper.visits.VisitRecorder;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.Signature;
import java.security.spec.ECGenParameterSpec;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.PessimisticLockingFailureException;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/** What phones send: once, as its writer's, and never lost. Rows stay, as in life, so that parallel requests see them. */
@PageTest
@Transactional(propagation = Propagation.NOT_SUPPORTED)
class IntakeTests {

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    JsonMapper json;

    @Autowired
    Sites sites;

    @Autowired
    Installs installs;

    @Autowired
    FieldPeople people;

    @Autowired
    ReportsToSettle settle;

    @Autowired
    VisitRecorder recorder;

    @Autowired
    Devices devices;

    @Autowired
    Checklists checklists;

    @Autowired
    SettingLeft setting;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    Clock clock;

    private SiteId site;
    private PersonId ada;

    @BeforeEach
    void makeSite() {
        site = sites.named("Spring of " + UUID.randomUUID());
        ada = people.named("Ada " + UUID.randomUUID());
    }

    private Map<String, Object> visit(UUID id, String note) {
        Map<String, Object> visit = new HashMap<>();
        visit.put("v", 1);
        visit.put("id", id);
        visit.put("site", site.value());
        visit.put("kind", "SERVICE");
        visit.put("on", LocalDate.now(clock).toString());
        visit.put("outcome", "DONE");
        visit.put("nobodyThere", true);
        visit.put("note", note);
        visit.put("photos", 0);
        return visit;
    }

    private Map<String, Object> envelope(PersonId writer, Map<String, Object> visit) {
        String text = json.writeValueAsString(visit);
        Map<String, Object> entry = new HashMap<>();
        entry.put("id", visit.get("id"));
        entry.put("person", writer.value());
        entry.put("text", text);
        entry.put("hash", Intake.sha256(text));
        entry.put("sentAt", clock.instant().toString());
        return entry;
    }

    private MvcTestResult send(PersonId as, @Nullable String key, Map<String, Object> entry) {
        var request = mvc.post()
                .uri("/field/entries")
                .with(user(PageTest.As.who(as, Role.TECHNICIAN)))
                .with(csrf())
                .contentType(MediaType.APPLICATION_JSON)
                .content(json.writeValueAsString(entry));
        return (key == null ? request : request.header("Idempotency-Key", key)).exchange();
    }

    private MvcTestResult send(PersonId as, Map<String, Object> entry) {
        return send(as, String.valueOf(entry.get("id")), entry);
    }

    private long reports(UUID id) {
        return jdbc.sql("select count(*) from visit_reports where id = :id")
                .param("id", id)
                .query(Long.class)
                .single();
    }

    private String held(UUID id) {
        return jdbc.sql(
                        "select coalesce((select reason || ' ' || cast(payload as text) from to_settle where report_id = :id), '')")
                .param("id", id)
                .query(String.class)
                .single();
    }

    @Test
    @DisplayName("SYN-02 the same visit five times: one report, the first answer each time, id and hash in it")
    void syn02RepeatGivesFirstAnswer() {
        UUID id = UUID.randomUUID();
        Map<String, Object> entry = envelope(ada, visit(id, "ticking well"));
        for (int i = 0; i < 5; i++) {
            assertThat(send(ada, entry))
                    .hasStatusOk()
                    .bodyJson()
                    .extractingPath("$")
                    .asMap()
                    .containsEntry("id", id.toString())
                    .containsEntry("hash", entry.get("hash"))
                    .containsEntry("result", "APPLIED")
                    .containsEntry("repeated", i > 0);
        }
        assertThat(reports(id)).isEqualTo(1);
    }

    @Test
    @DisplayName("SYN-03 the same id with other words is refused; the first stands")
    void syn03OtherContentIsRefused() {
        UUID id = UUID.randomUUID();
        send(ada, envelope(ada, visit(id, "first")));
        assertThat(send(ada, envelope(ada, visit(id, "second")))).hasStatus(422);
        assertThat(jdbc.sql("select note from visit_reports where id = :id")
                        .param("id", id)
                        .query(String.class)
                        .single())
                .isEqualTo("first");
    }

    @Test
    @DisplayName("SYN-04 ten at once: one report, the same answer for all")
    void syn04Parallel() throws Exception {
        UUID id = UUID.randomUUID();
        Map<String, Object> entry = envelope(ada, visit(id, "all at once"));
        try (Pool pool = new Pool()) {
            Callable<Integer> one = () -> send(ada, entry).getResponse().getStatus();
            for (Future<Integer> answer : pool.threads.invokeAll(java.util.Collections.nCopies(10, one))) {
                assertThat(answer.get()).isEqualTo(200);
            }
        }
        assertThat(reports(id)).isEqualTo(1);
    }

    private record Pool(ExecutorService threads) implements AutoCloseable {
        Pool() {
            this(Executors.newFixedThreadPool(10));
        }

        @Override
        public void close() {
            threads.shutdownNow();
        }
    }

    @Test
    @DisplayName("SYN-01 without a key: 400 that says where keys are explained")
    void syn01NeedsKey() {
        assertThat(send(ada, null, envelope(ada, visit(UUID.randomUUID(), ""))))
                .hasStatus(400)
                .bodyJson()
                .extractingPath("$.type")
                .isEqualTo("/help#phone");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "'; drop table visits --", "\"", "not-a-uuid", "00000000-0000-0000-0000-00000000000"})
    @DisplayName("SYN-05 keys of another form are refused before anything is looked up")
    void syn05KeyForm(String key) {
        assertThat(send(ada, key, envelope(ada, visit(UUID.randomUUID(), "")))).hasStatus(400);
    }

    @Test
    @DisplayName("SYN-05 a key of 300 characters, and one that is not the visit's, are refused")
    void syn05KeyFitsVisit() {
        Map<String, Object> entry = envelope(ada, visit(UUID.randomUUID(), ""));
        assertThat(send(ada, "a".repeat(300), entry)).hasStatus(400);
        assertThat(send(ada, UUID.randomUUID().toString(), entry)).hasStatus(400);
    }

    @Test
    @DisplayName("SYN-06 what was refused is not remembered: mended under the same id it is taken")
    void syn06RefusedIsNotRemembered() {
        UUID id = UUID.randomUUID();
        assertThat(send(ada, envelope(ada, visit(id, "x".repeat(10_001)))))
                .hasStatus(422)
                .bodyJson()
                .extractingPath("$.problems[0].path")
                .isEqualTo("note");
        assertThat(send(ada, envelope(ada, visit(id, "short")))).hasStatusOk();
    }

    @Test
    @DisplayName("SYN-12 for a visit that is not on the plan: kept whole for the office")
    void syn12UnknownVisitIsKept() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "did it anyway");
        visit.put("visit", UUID.randomUUID());
        assertThat(send(ada, envelope(ada, visit)))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.result")
                .isEqualTo("HELD");
        assertThat(held(id)).startsWith("VISIT_UNKNOWN").contains("did it anyway");
    }

    @Test
    @DisplayName("SYN-11 SYN-12 an install that is gone from the register: every word is kept for the office")
    void syn12RegisterChanged() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "pump was gone");
        visit.put(
                "readings",
                List.of(Map.of(
                        "install",
                        UUID.randomUUID(),
                        "quantity",
                        "BEAT_RATE",
                        "place",
                        "PUMP",
                        "value",
                        60,
                        "unit",
                        "PER_MINUTE",
                        "asRead",
                        true)));
        assertThat(send(ada, envelope(ada, visit)))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.result")
                .isEqualTo("HELD");
        assertThat(held(id)).startsWith("REGISTER_CHANGED").contains("pump was gone", "BEAT_RATE");
    }

    private KeyPair key() throws GeneralSecurityException {
        KeyPairGenerator keys = KeyPairGenerator.getInstance("EC");
        keys.initialize(new ECGenParameterSpec("secp256r1"));
        return keys.generateKeyPair();
    }

    private String device(PersonId person, KeyPair key) throws Exception {
        String body = mvc.post()
                .uri("/field/devices")
                .with(user(PageTest.As.who(person, Role.TECHNICIAN)))
                .with(csrf())
                .contentType(MediaType.APPLICATION_JSON)
                .content("{\"key\":\"%s\"}"
                        .formatted(Base64.getEncoder()
                                .encodeToString(key.getPublic().getEncoded())))
                .exchange()
                .getResponse()
                .getContentAsString();
        return json.readTree(body).get("id").asString();
    }

    private Map<String, Object> signed(Map<String, Object> entry, String device, KeyPair key)
            throws GeneralSecurityException {
        Signature sign = Signature.getInstance("SHA256withECDSAinP1363Format");
        sign.initSign(key.getPrivate());
        sign.update((entry.get("id") + "." + entry.get("hash")).getBytes(StandardCharsets.UTF_8));
        entry.put("device", device);
        entry.put("signature", Base64.getEncoder().encodeToString(sign.sign()));
        return entry;
    }

    @Test
    @DisplayName("SYN-14 a signed visit comes in under its writer through any session; unsigned or forged ones wait")
    void syn14Signature() throws Exception {
        account(ada, false);
        PersonId bo = people.named("Bo " + UUID.randomUUID());
        KeyPair key = key();
        String device = device(ada, key);
        UUID good = UUID.randomUUID();
        assertThat(send(bo, signed(envelope(ada, visit(good, "hers")), device, key)))
                .hasStatusOk();
        assertThat(jdbc.sql("select recorded_by from visit_reports where id = :id")
                        .param("id", good)
                        .query(UUID.class)
                        .single())
                .isEqualTo(ada.value());

        UUID unsigned = UUID.randomUUID();
        assertThat(send(bo, envelope(ada, visit(unsigned, "said to be hers")))).hasStatusOk();
        UUID forged = UUID.randomUUID();
        assertThat(send(bo, signed(envelope(ada, visit(forged, "forged")), device, key())))
                .hasStatusOk();
        UUID bosKey = UUID.randomUUID();
        assertThat(send(bo, signed(envelope(bo, visit(bosKey, "her key, his name")), device, key)))
                .hasStatusOk();
        for (UUID id : List.of(unsigned, forged, bosKey)) {
            assertThat(reports(id)).isZero();
            assertThat(held(id)).startsWith("SIGNATURE_WRONG");
        }
    }

    @Test
    @DisplayName("SYN-14 a locked writer's visit waits for the office, whole")
    void syn14LockedWriter() throws Exception {
        KeyPair key = key();
        String device = device(ada, key);
        account(ada, true);
        UUID id = UUID.randomUUID();
        assertThat(send(people.named("Cy " + id), signed(envelope(ada, visit(id, "before she left")), device, key)))
                .hasStatusOk();
        assertThat(reports(id)).isZero();
        assertThat(held(id)).startsWith("WRITER_LOCKED").contains("before she left");
    }

    private void account(PersonId person, boolean locked) {
        jdbc.sql(
                        "insert into accounts (id, person_id, login, disabled_at) values (:id, :person, :login, case when :locked then now() end)")
                .param("id", UUID.randomUUID())
                .param("person", person.value())
                .param("login", "phone-" + person.value())
                .param("locked", locked)
                .update();
    }

    @Test
    @DisplayName("SYN-21 a clock three days ahead is noted; the visit is taken as told")
    void syn21Clock() {
        Map<String, Object> entry = envelope(ada, visit(UUID.randomUUID(), "early"));
        entry.put("sentAt", clock.instant().plus(Duration.ofDays(3)).toString());
        assertThat(send(ada, entry))
                .hasStatusOk()
                .bodyJson()
                .extractingPath("$.clockAheadS")
                .asNumber()
                .satisfies(ahead -> assertThat(ahead.longValue()).isBetween(259_100L, 259_200L));
    }

    @Test
    @DisplayName("SYN-07 sent again after sixty days: still the first answer, still one visit")
    void syn07SixtyDaysLater() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "from a phone that lay in a drawer");
        Map<String, Object> entry = envelope(ada, visit);
        assertThat(send(ada, entry)).hasStatusOk();
        Clock later = Clock.offset(clock, Duration.ofDays(60));
        Intake then = new Intake(jdbc, json, recorder, devices, checklists, setting, transaction, later);
        SecurityContextHolder.getContext()
                .setAuthentication(new TestingAuthenticationToken("ada", "", "ROLE_TECHNICIAN"));
        try {
            Intake.Answer again = then.take(json.readValue(json.writeValueAsString(entry), Entry.class), ada);
            assertThat(again.repeated()).isTrue();
            assertThat(again.result()).isEqualTo("APPLIED");
        } finally {
            SecurityContextHolder.clearContext();
        }
        assertThat(reports(id)).isEqualTo(1);
    }

    @Test
    @DisplayName("SYN-25 two that wait for each other: it arrives, or is told to come again in a moment; never a 500")
    void syn25Crossing() throws Exception {
        UUID planned = UUID.randomUUID();
        jdbc.sql("insert into visits (id, site_id, kind, planned_on) values (:id, :site, 'SERVICE', :on)")
                .param("id", planned)
                .param("site", site.value())
                .param("on", LocalDate.now(clock))
                .update();
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "crossing");
        visit.put("visit", planned);
        Map<String, Object> entry = envelope(ada, visit);
        try (Pool pool = new Pool()) {
            Future<MvcTestResult> sent = transaction.execute(status -> {
                jdbc.sql("select id from visits where id = :id for update")
                        .param("id", planned)
                        .query(UUID.class)
                        .single();
                Future<MvcTestResult> sending = pool.threads.submit(() -> send(ada, entry));
                pause();
                try {
                    jdbc.sql("select pg_advisory_xact_lock(hashtextextended(:id, 0))")
                            .param("id", id.toString())
                            .query((row, n) -> true)
                            .list();
                } catch (PessimisticLockingFailureException chosen) {
                    status.setRollbackOnly();
                }
                return sending;
            });
            int answer = sent.get().getResponse().getStatus();
            assertThat(answer).isIn(200, 409, 503);
            assertThat(reports(id)).isEqualTo(answer == 200 ? 1 : 0);
        }
        assertThat(send(ada, entry)).hasStatusOk();
        assertThat(reports(id)).isEqualTo(1);
    }

    private static void pause() {
        try {
            Thread.sleep(600);
        } catch (InterruptedException stop) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    @DisplayName("a dosed product without word that the pump was isolated is refused with what to do")
    void disinfectionOnlyDownstreamOfIsolatedPump() {
        Map<String, Object> visit = visit(UUID.randomUUID(), "shock dosed");
        visit.put("water", Map.of("product", "hypochlorite", "strength", "50 mg/l", "isolated", false));
        assertThat(send(ada, envelope(ada, visit)))
                .hasStatus(422)
                .bodyJson()
                .extractingPath("$.problems[0].sentence")
                .asString()
                .contains("isolated pump");
    }

    @Test
    @DisplayName("SYN-22 fields this release does not know are kept in the text and not refused")
    void syn22OtherEdition() {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "from another edition");
        visit.put("moodOfTheGoat", "fair");
        assertThat(send(ada, envelope(ada, visit))).hasStatusOk();
        assertThat(jdbc.sql("select text from field_entries where id = :id")
                        .param("id", id)
                        .query(String.class)
                        .single())
                .contains("moodOfTheGoat");
    }

    @Test
    @DisplayName("FLT-29 NUL, broken JSON, half an entry: refused with words")
    void flt29Broken() {
        assertThat(send(ada, envelope(ada, visit(UUID.randomUUID(), "a\u0000b"))))
                .hasStatus(422);
        Map<String, Object> half = envelope(ada, visit(UUID.randomUUID(), ""));
        half.remove("hash");
        assertThat(send(ada, half)).hasStatus(422);
        Map<String, Object> torn = envelope(ada, visit(UUID.randomUUID(), ""));
        torn.put("text", String.valueOf(torn.get("text")).substring(0, 40));
        assertThat(send(ada, torn)).hasStatus(422);
        Map<String, Object> noKind = visit(UUID.randomUUID(), "");
        noKind.put("kind", "PICNIC");
        assertThat(send(ada, envelope(ada, noKind))).hasStatus(422);
        noKind.put("kind", null);
        assertThat(send(ada, envelope(ada, noKind))).hasStatus(422);
    }

    @Test
    @DisplayName("SYN-20 a photo that came in half is refused, whole it joins the report once")
    void syn20Photos() throws Exception {
        UUID id = UUID.randomUUID();
        Map<String, Object> visit = visit(id, "with a picture");
        visit.put("photos", 1);
        send(ada, envelope(ada, visit));
        var picture = new java.io.ByteArrayOutputStream();
        javax.imageio.ImageIO.write(
                new java.awt.image.BufferedImage(30, 20, java.awt.image.BufferedImage.TYPE_INT_RGB), "jpg", picture);
        byte[] whole = picture.toByteArray();
        UUID photo = UUID.randomUUID();
        assertThat(photo(photo, id, java.util.Arrays.copyOf(whole, whole.length / 2), Intake.sha256(whole)))
                .hasStatus(422);
        for (int i = 0; i < 3; i++) {
            assertThat(photo(photo, id, whole, Intake.sha256(whole)))
                    .hasStatusOk()
                    .bodyJson()
                    .extractingPath("$.arrived")
                    .isEqualTo(1);
        }
        assertThat(jdbc.sql("select count(*) from photos where report_id = :id")
                        .param("id", id)
                        .query(Long.class)
                        .single())
                .isEqualTo(1);
        assertThat(photo(UUID.randomUUID(), id, whole, Intake.sha256(whole))).hasStatus(422);
    }

    private MvcTestResult photo(UUID photo, UUID entry, byte[] content, String hash) {
        return mvc.post()
                .uri("/field/photos?entry={e}&hash={h}&caption=gate", entry, hash)
                .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                .with(csrf())
                .header("Idempotency-Key", photo.toString())
                .contentType(MediaType.APPLICATION_OCTET_STREAM)
                .content(content)
                .exchange();
    }

    @Test
    @DisplayName("SYN-14 signed out: 401 for scripts, never a page")
    void syn14SignedOut() {
        assertThat(mvc.post()
                        .uri("/field/entries")
                        .with(csrf())
                        .with(org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors
                                .anonymous())
                        .exchange())
                .hasStatus(401);
        assertThat(mvc.get()
                        .uri("/field/session")
                        .with(org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors
                                .anonymous())
                        .exchange())
                .hasStatus(401);
    }

    @Test
    void bundleHasNoPrivateNotesAndAnswersNotModified() throws Exception {
        var ask = mvc.get().uri("/field/bundle").with(user(PageTest.As.who(ada, Role.TECHNICIAN)));
        var first = ask.exchange().getResponse();
        assertThat(first.getContentAsString())
                .contains(site.value().toString())
                .doesNotContain("private_notes", "price");
        assertThat(mvc.get()
                        .uri("/field/bundle")
                        .header("If-None-Match", String.valueOf(first.getHeader("ETag")))
                        .with(user(PageTest.As.who(ada, Role.TECHNICIAN))))
                .hasStatus(304);
    }
}
