package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.IdentitySettings;
import app.ramkeeper.identity.Role;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsPasswordService;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Accounts as sign-in reads them, and the place where a password of an older kind gets its new hash. */
@Component
public class AccountUsers implements UserDetailsService, UserDetailsPasswordService {

    private static final String SELECT = """
            select a.id, a.person_id, a.login, a.password_hash, a.disabled_at is not null as disabled,
                   exists (select 1 from account_codes c where c.account_id = a.id) as has_codes, p.name, p.depot_id,
                   array(select r.role from account_roles r where r.account_id = a.id) as roles
            from accounts a join people p on p.id = a.person_id
            where\s""";

    private final JdbcClient jdbc;
    private final boolean passwordIsEnough;

    AccountUsers(JdbcClient jdbc, IdentitySettings settings) {
        this.jdbc = jdbc;
        this.passwordIsEnough = !settings.needsSecondFactor();
    }

    @Override
    @Transactional(readOnly = true)
    public UserDetails loadUserByUsername(String login) {
        if (login.length() > 100 || login.chars().anyMatch(Character::isISOControl)) {
            throw new UsernameNotFoundException("No account can have this sign-in name");
        }
        return jdbc.sql(SELECT + "folded(a.login) = folded(?)")
                .param(login.strip())
                .query(this::read)
                .optional()
                .orElseThrow(() -> new UsernameNotFoundException("No account with this sign-in name"));
    }

    /** The account's person and roles as they are now; empty if it is gone or disabled. */
    @Transactional(readOnly = true)
    public Optional<CurrentUser> active(UUID account) {
        return jdbc.sql(SELECT + "a.id = ? and a.disabled_at is null")
                .param(account)
                .query(this::read)
                .optional()
                .map(SigningIn::user);
    }

    @Override
    @Transactional
    public UserDetails updatePassword(UserDetails user, @Nullable String newHash) {
        SigningIn account = (SigningIn) user;
        jdbc.sql(
                        "update accounts set password_hash = :hash, version = version + 1 where id = :id and password_hash = :old")
                .param("hash", newHash)
                .param("id", account.user().account())
                .param("old", account.hash())
                .update();
        return new SigningIn(account.user(), newHash, account.disabled(), account.passwordIsEnough());
    }

    private SigningIn read(ResultSet row, int number) throws SQLException {
        var roles = Arrays.stream((String[]) row.getArray("roles").getArray())
                .map(Role::valueOf)
                .collect(Collectors.toUnmodifiableSet());
        CurrentUser user = new CurrentUser(
                row.getObject("id", UUID.class),
                row.getObject("person_id", UUID.class),
                row.getString("login"),
                row.getString("name"),
                roles,
                row.getObject("depot_id", UUID.class));
        return new SigningIn(
                user,
                row.getString("password_hash"),
                row.getBoolean("disabled"),
                passwordIsEnough && !row.getBoolean("has_codes"));
    }
}
