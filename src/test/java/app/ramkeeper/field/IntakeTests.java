package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.PageTest;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Future;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** What phones send: once, and never lost. */
class IntakeTests extends FromPhones {

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
            for (Future<Integer> answer : pool.threads().invokeAll(java.util.Collections.nCopies(10, one))) {
                assertThat(answer.get()).isEqualTo(200);
            }
        }
        assertThat(reports(id)).isEqualTo(1);
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

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            "kind":"SERVICE"      | "kind":["SERVICE"]
            "photos":0            | "photos":"0"
            "photos":0            | "photos":"1e3"
            "note":"strict"       | "note":true
            "note":"strict"       | "note":7
            "nobodyThere":true    | "nobodyThere":"true"
            "nobodyThere":true    | "nobodyThere":1
            "note":"strict"       | "note":"strict","note":"twice"
            "outcome":"DONE"      | "outcome":"SOMEHOW"
            """)
    @DisplayName(
            "SEC-16 a visit whose fields have other types, unknown words or a name twice is refused, never guessed at")
    void sec16StrictTypes(String right, String wrong) {
        Map<String, Object> entry = envelope(ada, visit(UUID.randomUUID(), "strict"));
        String text = String.valueOf(entry.get("text"));
        assertThat(text).contains(right);
        text = text.replace(right, wrong);
        entry.put("text", text);
        entry.put("hash", Intake.sha256(text));

        assertThat(send(ada, entry)).hasStatus(422).hasContentType(MediaType.APPLICATION_PROBLEM_JSON);
        assertThat(jdbc.sql("select count(*) from visit_reports where id = ?")
                        .param(entry.get("id"))
                        .query(Long.class)
                        .single())
                .isZero();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            "text":"              | "text":"other","text":"
            "hash":"              | "hash":12,"was":"
            }                     | } {}
            """)
    @DisplayName("SEC-16 an envelope with a name twice, a number for a text or something after its end is refused")
    void sec16StrictEnvelope(String right, String wrong) {
        Map<String, Object> entry = envelope(ada, visit(UUID.randomUUID(), "strict"));
        String body = json.writeValueAsString(entry);
        String broken = right.equals("}") ? body + wrong.substring(1) : body.replaceFirst(Pattern.quote(right), wrong);

        assertThat(mvc.post()
                        .uri("/field/entries")
                        .with(user(PageTest.As.who(ada, Role.TECHNICIAN)))
                        .with(csrf())
                        .header("Idempotency-Key", entry.get("id"))
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(broken))
                .hasStatus(422);
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
