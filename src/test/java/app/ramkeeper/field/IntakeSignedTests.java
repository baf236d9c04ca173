package app.ramkeeper.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.visits.PageTest;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.Signature;
import java.security.spec.ECGenParameterSpec;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.http.MediaType;

/** What phones send is taken as its writer's, whoever holds the phone. */
class IntakeSignedTests extends FromPhones {

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
}
