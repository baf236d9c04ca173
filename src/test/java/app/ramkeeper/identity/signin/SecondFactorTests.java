package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

@SpringBootTest
@Import(TestDatabase.class)
class SecondFactorTests {

    @Autowired
    SecondFactor factors;

    @Autowired
    Accounts accounts;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private final byte[] secret = Tokens.bytes(20);
    private UUID account = UUID.randomUUID();

    @BeforeEach
    void makeAccount() {
        account = accounts.create(new NewAccount(
                        accounts.addPerson("Fern Kettle"), "fern-" + UUID.randomUUID(), null, Set.of(Role.OFFICE)))
                .value();
    }

    @Test
    @DisplayName("SEC-51 a wrong code sets nothing up")
    void sec51NeedsTheRightCode() {
        assertThat(factors.enrol(account, secret, "000000x")).isEmpty();
        assertThat(factors.isEnrolled(account)).isFalse();
    }

    @Test
    @DisplayName("SEC-55 a code works once, also the one of the set-up")
    void sec55CodeWorksOnce() {
        factors.enrol(account, secret, now(0));

        assertThat(factors.check(account, now(0))).isFalse();
        assertThat(factors.check(account, now(1))).isTrue();
        assertThat(factors.check(account, now(1))).isFalse();
        assertThat(factors.check(account, now(0))).isFalse();
    }

    @Test
    @DisplayName("SEC-55 a recovery code works once, however it is typed")
    void sec55RecoveryCodeWorksOnce() {
        List<String> codes = factors.enrol(account, secret, now(0));

        assertThat(codes)
                .hasSize(10)
                .doesNotHaveDuplicates()
                .allMatch(code -> code.matches("[a-z2-9]{4}(-[a-z2-9]{4}){3}"));
        assertThat(factors.check(
                        account, codes.get(0).toUpperCase(java.util.Locale.ROOT).replace("-", " ")))
                .isTrue();
        assertThat(factors.check(account, codes.get(0))).isFalse();
        assertThat(factors.recoveryCodesLeft(account)).isEqualTo(9);
        factors.renewRecoveryCodes(account);
        assertThat(factors.check(account, codes.get(1))).isFalse();
    }

    @Test
    @DisplayName("SEC-78 neither the secret nor a recovery code stands in the trail or in the table of codes")
    void sec78KeepsSecretsOut() {
        List<String> codes = factors.enrol(account, secret, now(0));
        String trail = jdbc.sql(
                        "select coalesce(string_agg(coalesce(old_values::text, '') || coalesce(new_values::text, ''), ' '), '')"
                                + " from audit_entries where row_id like ? or new_values ->> 'account_id' = ?")
                .params(account + "%", account.toString())
                .query(String.class)
                .single();

        assertThat(trail).contains("(secret").doesNotContain(HexFormat.of().formatHex(secret));
        assertThat(jdbc.sql("select count(*) from recovery_codes where code_hash = cast(? as bytea)")
                        .param(codes.get(0).getBytes(java.nio.charset.StandardCharsets.UTF_8))
                        .query(Long.class)
                        .single())
                .isZero();
        assertThat(trail).doesNotContain(codes);
    }

    private String now(int stepsAhead) {
        return Totp.code(secret, clock.instant().getEpochSecond() / Totp.STEP_SECONDS + stepsAhead, 6);
    }
}
