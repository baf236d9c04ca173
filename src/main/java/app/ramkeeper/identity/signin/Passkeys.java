package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.IdentitySettings;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.nio.ByteBuffer;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.webauthn.api.AuthenticatorAssertionResponse;
import org.springframework.security.web.webauthn.api.AuthenticatorAttestationResponse;
import org.springframework.security.web.webauthn.api.AuthenticatorSelectionCriteria;
import org.springframework.security.web.webauthn.api.Bytes;
import org.springframework.security.web.webauthn.api.CredentialRecord;
import org.springframework.security.web.webauthn.api.PublicKeyCredential;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialCreationOptions;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRequestOptions;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRpEntity;
import org.springframework.security.web.webauthn.api.ResidentKeyRequirement;
import org.springframework.security.web.webauthn.api.UserVerificationRequirement;
import org.springframework.security.web.webauthn.jackson.WebauthnJacksonModule;
import org.springframework.security.web.webauthn.management.ImmutablePublicKeyCredentialCreationOptionsRequest;
import org.springframework.security.web.webauthn.management.ImmutablePublicKeyCredentialRequestOptionsRequest;
import org.springframework.security.web.webauthn.management.ImmutableRelyingPartyRegistrationRequest;
import org.springframework.security.web.webauthn.management.JdbcUserCredentialRepository;
import org.springframework.security.web.webauthn.management.RelyingPartyAuthenticationRequest;
import org.springframework.security.web.webauthn.management.RelyingPartyPublicKey;
import org.springframework.security.web.webauthn.management.UserCredentialRepository;
import org.springframework.security.web.webauthn.management.Webauthn4JRelyingPartyOperations;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/**
 * Passkeys by WebAuthn. The device must have verified its user (PIN, finger, face), which the library only asks for
 * when told to; so one passkey counts as two factors.
 */
@Service
@Transactional
public class Passkeys {

    /** A key as its owner sees it. */
    public record Key(
            String id,
            String label,
            @Nullable Instant made,
            @Nullable Instant lastUsed) {}

    private final Webauthn4JRelyingPartyOperations party;
    private final UserCredentialRepository credentials;
    private final SecondFactor factors;
    private final JsonMapper json = JsonMapper.builder()
            .addModule(new WebauthnJacksonModule())
            .changeDefaultPropertyInclusion(all -> all.withValueInclusion(JsonInclude.Include.NON_NULL))
            .build();

    Passkeys(JdbcOperations jdbc, PasskeyUsers users, SecondFactor factors, IdentitySettings settings) {
        this.credentials = new JdbcUserCredentialRepository(jdbc);
        this.factors = factors;
        PublicKeyCredentialRpEntity name = PublicKeyCredentialRpEntity.builder()
                .id(settings.publicAddress().getHost())
                .name("Ramkeeper")
                .build();
        this.party = new Webauthn4JRelyingPartyOperations(users, credentials, name, Set.of(settings.origin()));
        party.setCustomizeCreationOptions(
                options -> options.authenticatorSelection(AuthenticatorSelectionCriteria.builder()
                        .residentKey(ResidentKeyRequirement.REQUIRED)
                        .userVerification(UserVerificationRequirement.REQUIRED)
                        .build()));
        party.setCustomizeRequestOptions(options -> options.userVerification(UserVerificationRequirement.REQUIRED));
    }

    /** What a browser needs to make a key. */
    public PublicKeyCredentialCreationOptions creation(Authentication who) {
        return party.createPublicKeyCredentialCreationOptions(
                new ImmutablePublicKeyCredentialCreationOptionsRequest(who));
    }

    /** What a browser needs to use any key of this site. */
    public PublicKeyCredentialRequestOptions request() {
        return party.createCredentialRequestOptions(new ImmutablePublicKeyCredentialRequestOptionsRequest(null));
    }

    /** Options as a browser reads them. */
    public String write(Object options) {
        return json.writeValueAsString(options);
    }

    /** Keeps a new key under a name. */
    public void register(PublicKeyCredentialCreationOptions options, String credential, String label) {
        PublicKeyCredential<AuthenticatorAttestationResponse> answer =
                json.readValue(credential, new TypeReference<>() {});
        party.registerCredential(
                new ImmutableRelyingPartyRegistrationRequest(options, new RelyingPartyPublicKey(answer, label)));
    }

    /** Checks the answer of a key and returns the account it belongs to. */
    public UUID authenticate(PublicKeyCredentialRequestOptions options, String credential) {
        PublicKeyCredential<AuthenticatorAssertionResponse> answer =
                json.readValue(credential, new TypeReference<>() {});
        byte[] handle = party.authenticate(new RelyingPartyAuthenticationRequest(options, answer))
                .getId()
                .getBytes();
        ByteBuffer bytes = ByteBuffer.wrap(handle);
        return new UUID(bytes.getLong(), bytes.getLong());
    }

    @Transactional(readOnly = true)
    public List<Key> of(UUID account) {
        return found(account).stream()
                .map(key -> new Key(
                        key.getCredentialId().toBase64UrlString(), key.getLabel(), key.getCreated(), key.getLastUsed()))
                .toList();
    }

    /** Removes one of the account's keys, but never the last second factor. */
    public void remove(UUID account, String id) {
        List<CredentialRecord> mine = found(account);
        CredentialRecord key = mine.stream()
                .filter(record -> record.getCredentialId().toBase64UrlString().equals(id))
                .findFirst()
                .orElseThrow(() -> new Missing("passkey", id));
        if (mine.size() == 1 && !factors.hasCodes(account)) {
            throw new Conflict(
                    "This is your last second factor. Set up codes or another passkey before you remove it.");
        }
        credentials.delete(key.getCredentialId());
    }

    private List<CredentialRecord> found(UUID account) {
        return credentials.findByUserId(new Bytes(SecondFactor.handleBytes(account)));
    }
}
