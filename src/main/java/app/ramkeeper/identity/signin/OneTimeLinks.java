package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.IdentitySettings;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Links that set a password: for an invitation, a reset, or the first administrator.
 *
 * <p>The token has 256 random bits and only its hash is kept. Looking at a link leaves it as it is; using it removes it
 * in the same statement that checks it, so it works once, on whichever node. It never skips the second factor.
 */
@Service
public class OneTimeLinks {

    /** What a link is for. */
    public enum Purpose {
        INVITE,
        RESET,
        SETUP
    }

    /** What stands behind a token; a setup link has no account yet. */
    public record Behind(Purpose purpose, @Nullable UUID account) {}

    private final JdbcClient jdbc;
    private final IdentitySettings settings;
    private final Clock clock;

    OneTimeLinks(JdbcClient jdbc, IdentitySettings settings, Clock clock) {
        this.jdbc = jdbc;
        this.settings = settings;
        this.clock = clock;
    }

    /**
     * Makes a link; earlier ones of the same account and purpose stop working. Setup links of several nodes stay side by
     * side: the first that is used makes the others useless.
     */
    @Transactional
    public String make(Purpose purpose, @Nullable UUID account) {
        jdbc.sql("delete from one_time_links where (purpose = :purpose and account_id = cast(:account as uuid))"
                        + " or expires_at < :now")
                .param("purpose", purpose.name())
                .param("account", account)
                .param("now", at(clock.instant()))
                .update();
        String token = Tokens.next();
        jdbc.sql(
                        "insert into one_time_links (token_hash, account_id, purpose, expires_at) values (:hash, :account, :purpose, :expires)")
                .param("hash", Tokens.hash(token))
                .param("account", account)
                .param("purpose", purpose.name())
                .param("expires", at(clock.instant().plus(lifetime(purpose))))
                .update();
        return settings.link("/link/" + token);
    }

    /** How long a link of this purpose works. */
    public Duration lifetime(Purpose purpose) {
        return purpose == Purpose.RESET ? settings.resetLifetime() : settings.inviteLifetime();
    }

    /** Looks behind a token without using it. */
    @Transactional(readOnly = true)
    public Optional<Behind> look(String token) {
        return jdbc.sql(
                        "select purpose, account_id as account from one_time_links where token_hash = :hash and expires_at > :now")
                .param("hash", Tokens.hash(token))
                .param("now", at(clock.instant()))
                .query(Behind.class)
                .optional();
    }

    /** Uses a token up; belongs into the transaction that does what the link is for. */
    @Transactional
    public Optional<Behind> use(String token) {
        return jdbc.sql("delete from one_time_links where token_hash = :hash and expires_at > :now"
                        + " returning purpose, account_id as account")
                .param("hash", Tokens.hash(token))
                .param("now", at(clock.instant()))
                .query(Behind.class)
                .optional();
    }

    /** Makes all links of an account useless. */
    @Transactional
    public void forget(UUID account) {
        jdbc.sql("delete from one_time_links where account_id = ?")
                .param(account)
                .update();
    }

    /** Makes all setup links useless, since there is an administrator now. */
    @Transactional
    public void forgetSetup() {
        jdbc.sql("delete from one_time_links where purpose = 'SETUP'").update();
    }

    private static OffsetDateTime at(Instant instant) {
        return OffsetDateTime.ofInstant(instant, ZoneOffset.UTC);
    }
}
