package app.ramkeeper.identity.own;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.signin.OwnSessions;
import app.ramkeeper.identity.signin.PasswordRules;
import app.ramkeeper.identity.signin.SecurityLog;
import app.ramkeeper.identity.signin.SignInLimits;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Checks and changes a person's own password. A wrong current one counts like a failed sign-in. */
@Service
@ForAll
class OwnPassword {

    private static final String WHAT = "password";

    private final JdbcClient jdbc;
    private final PasswordEncoder encoder;
    private final PasswordRules rules;
    private final SignInLimits limits;
    private final OwnSessions sessions;
    private final SecurityLog log;

    OwnPassword(
            JdbcClient jdbc,
            PasswordEncoder encoder,
            PasswordRules rules,
            SignInLimits limits,
            OwnSessions sessions,
            SecurityLog log) {
        this.jdbc = jdbc;
        this.encoder = encoder;
        this.rules = rules;
        this.limits = limits;
        this.sessions = sessions;
        this.log = log;
    }

    /** Whether this is the person's password. */
    boolean isRight(CurrentUser user, @Nullable String password, String address) {
        limits.take(WHAT, user.login(), address);
        Optional<String> hash = jdbc.sql("select password_hash from accounts where id = ? and disabled_at is null")
                .param(user.account())
                .query(String.class)
                .optional();
        boolean right = password != null && hash.isPresent() && encoder.matches(password, hash.get());
        if (right) {
            limits.forget(WHAT, user.login(), address);
        } else {
            log.event("password-check", "failed", user.login(), address, "");
        }
        return right;
    }

    /** The message key of what is wrong with a new password, if anything is. */
    Optional<String> objection(CurrentUser user, @Nullable String password) {
        return rules.objection(password, user.login());
    }

    /** Sets the new password and ends the account's other sessions. */
    @Transactional
    public void change(CurrentUser user, String password, String sessionId, String address) {
        jdbc.sql("update accounts set password_hash = ?, version = version + 1 where id = ?")
                .params(encoder.encode(password), user.account())
                .update();
        sessions.endAll(user.login(), sessionId);
        log.event("password", "changed", user.login(), address, "");
    }
}
