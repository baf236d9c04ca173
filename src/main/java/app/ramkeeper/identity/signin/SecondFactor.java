package app.ramkeeper.identity.signin;

import app.ramkeeper.shared.Conflict;
import java.nio.ByteBuffer;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Codes of an authenticator program, and recovery codes for when the device is lost. */
@Service
@Transactional
public class SecondFactor {

    private static final int RECOVERY_CODES = 10;
    private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

    private final JdbcClient jdbc;
    private final Clock clock;

    SecondFactor(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Whether the account has any second factor: codes or a passkey. */
    @Transactional(readOnly = true)
    public boolean isEnrolled(UUID account) {
        return hasCodes(account) || passkeys(account) > 0;
    }

    @Transactional(readOnly = true)
    public boolean hasCodes(UUID account) {
        return count("select count(*) from account_codes where account_id = ?", account) > 0;
    }

    @Transactional(readOnly = true)
    public long recoveryCodesLeft(UUID account) {
        return count("select count(*) from recovery_codes where account_id = ?", account);
    }

    /** Takes over a new secret once a code shows that the device has it, and returns new recovery codes to be shown once. */
    public List<String> enrol(UUID account, byte[] secret, String code) {
        OptionalLong step = Totp.matchingStep(secret, plain(code), clock.instant());
        if (step.isEmpty()) {
            return List.of();
        }
        jdbc.sql("""
                        insert into account_codes (account_id, secret, last_step, since) values (:account, :secret, :step, :now)
                        on conflict (account_id) do update set secret = :secret, last_step = :step, since = :now""")
                .param("account", account)
                .param("secret", secret)
                .param("step", step.getAsLong())
                .param("now", OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC))
                .update();
        return renewRecoveryCodes(account);
    }

    /** Checks a code of the device or a recovery code; each works once. */
    public boolean check(UUID account, String typed) {
        String code = plain(typed);
        return code.matches("\\d{6}") ? checkCode(account, code) : checkRecovery(account, code);
    }

    /** Replaces the recovery codes. */
    public List<String> renewRecoveryCodes(UUID account) {
        jdbc.sql("delete from recovery_codes where account_id = ?")
                .param(account)
                .update();
        List<String> codes = new ArrayList<>();
        for (int i = 0; i < RECOVERY_CODES; i++) {
            String code = recoveryCode();
            codes.add(code);
            jdbc.sql("insert into recovery_codes (account_id, code_hash) values (?, ?)")
                    .params(account, Tokens.hash(plain(code)))
                    .update();
        }
        return codes;
    }

    /** Stops codes; allowed only while a passkey remains. */
    public void removeCodes(UUID account) {
        if (passkeys(account) == 0) {
            throw new Conflict("This is your last second factor. Add a passkey before you remove it.");
        }
        jdbc.sql("delete from account_codes where account_id = ?")
                .param(account)
                .update();
    }

    /** Takes everything away, for somebody who lost it all. */
    public void removeAll(UUID account) {
        jdbc.sql("delete from account_codes where account_id = ?")
                .param(account)
                .update();
        jdbc.sql("delete from recovery_codes where account_id = ?")
                .param(account)
                .update();
        jdbc.sql("delete from user_credentials where user_entity_user_id = ?")
                .param(handle(account))
                .update();
    }

    @Transactional(readOnly = true)
    public long passkeys(UUID account) {
        return jdbc.sql("select count(*) from user_credentials where user_entity_user_id = ?")
                .param(handle(account))
                .query(Long.class)
                .single();
    }

    /** The account as passkeys know it: its sixteen bytes, which tell nothing about the person. */
    static byte[] handleBytes(UUID account) {
        return ByteBuffer.allocate(16)
                .putLong(account.getMostSignificantBits())
                .putLong(account.getLeastSignificantBits())
                .array();
    }

    private static String handle(UUID account) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(handleBytes(account));
    }

    private boolean checkCode(UUID account, String code) {
        return jdbc.sql("select secret from account_codes where account_id = ?")
                .param(account)
                .query((row, number) -> row.getBytes(1))
                .optional()
                .map(secret -> Totp.matchingStep(secret, code, clock.instant()))
                .filter(OptionalLong::isPresent)
                .map(step -> jdbc.sql(
                                        "update account_codes set last_step = :step where account_id = :account and last_step < :step")
                                .param("step", step.getAsLong())
                                .param("account", account)
                                .update()
                        == 1)
                .orElse(false);
    }

    private boolean checkRecovery(UUID account, String code) {
        return jdbc.sql("delete from recovery_codes where account_id = ? and code_hash = ?")
                        .params(account, Tokens.hash(code))
                        .update()
                == 1;
    }

    private long count(String sql, UUID account) {
        return jdbc.sql(sql).param(account).query(Long.class).single();
    }

    /** Sixteen letters of 31: 79 random bits. */
    private static String recoveryCode() {
        StringBuilder code = new StringBuilder();
        for (byte b : Tokens.bytes(64)) {
            int value = b & 0xFF;
            if (value < 248 && code.length() < 19) {
                code.append(code.length() % 5 == 4 ? "-" : "").append(LETTERS.charAt(value % 31));
            }
        }
        return code.toString();
    }

    private static String plain(String typed) {
        return typed.replaceAll("[\\s-]", "").toLowerCase(Locale.ROOT);
    }
}
