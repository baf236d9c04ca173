package app.ramkeeper.identity.signin;

import java.nio.ByteBuffer;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.web.webauthn.api.Bytes;
import org.springframework.security.web.webauthn.api.ImmutablePublicKeyCredentialUserEntity;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialUserEntity;
import org.springframework.security.web.webauthn.management.PublicKeyCredentialUserEntityRepository;
import org.springframework.stereotype.Component;

/** Accounts as passkeys know them. The handle is the account's id, so there is nothing to store beside the accounts. */
@Component
class PasskeyUsers implements PublicKeyCredentialUserEntityRepository {

    private final AccountUsers accounts;

    PasskeyUsers(AccountUsers accounts) {
        this.accounts = accounts;
    }

    @Override
    public @Nullable PublicKeyCredentialUserEntity findById(Bytes id) {
        if (id.getBytes().length != 16) {
            return null;
        }
        ByteBuffer bytes = ByteBuffer.wrap(id.getBytes());
        return accounts.active(new UUID(bytes.getLong(), bytes.getLong()))
                .map(user -> entity(user.account(), user.login(), user.name()))
                .orElse(null);
    }

    @Override
    public @Nullable PublicKeyCredentialUserEntity findByUsername(String login) {
        try {
            var user = ((SigningIn) accounts.loadUserByUsername(login)).user();
            return entity(user.account(), user.login(), user.name());
        } catch (UsernameNotFoundException unknown) {
            return null;
        }
    }

    @Override
    public void save(PublicKeyCredentialUserEntity user) {
        // accounts are made elsewhere
    }

    @Override
    public void delete(Bytes id) {
        // accounts are never removed
    }

    private static PublicKeyCredentialUserEntity entity(UUID account, String login, String name) {
        return ImmutablePublicKeyCredentialUserEntity.builder()
                .id(new Bytes(SecondFactor.handleBytes(account)))
                .name(login)
                .displayName(name)
                .build();
    }
}
