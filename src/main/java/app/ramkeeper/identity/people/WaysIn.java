package app.ramkeeper.identity.people;

import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import app.ramkeeper.identity.signin.OneTimeLinks;
import app.ramkeeper.identity.signin.OneTimeLinks.Behind;
import app.ramkeeper.identity.signin.OneTimeLinks.Purpose;
import app.ramkeeper.identity.signin.OwnSessions;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Sets passwords through one-time links. */
@Service
class WaysIn {

    private final OneTimeLinks links;
    private final Accounts accounts;
    private final AccountRepository repository;
    private final PasswordEncoder encoder;
    private final OwnSessions sessions;
    private final JdbcClient jdbc;

    WaysIn(
            OneTimeLinks links,
            Accounts accounts,
            AccountRepository repository,
            PasswordEncoder encoder,
            OwnSessions sessions,
            JdbcClient jdbc) {
        this.links = links;
        this.accounts = accounts;
        this.repository = repository;
        this.encoder = encoder;
        this.sessions = sessions;
        this.jdbc = jdbc;
    }

    /** The sign-in name that a link is for; empty for a setup link. */
    @Transactional(readOnly = true)
    Optional<String> loginBehind(Behind behind) {
        return account(behind.account()).map(Account::login);
    }

    /** Sets the password of the account behind a link and ends its sessions; false if the link no longer works. */
    @Transactional
    boolean set(String token, String password) {
        Optional<Account> account = links.use(token)
                .filter(behind -> behind.purpose() != Purpose.SETUP)
                .flatMap(behind -> account(behind.account()))
                .filter(found -> !found.isDisabled());
        account.ifPresent(found -> {
            found.password(encoder.encode(password));
            repository.save(found);
            links.forget(found.id());
            sessions.endAll(found.login(), null);
        });
        return account.isPresent();
    }

    /** Makes the first administrator; false if the link no longer works or there is an account already. */
    @Transactional
    boolean setUp(String token, String name, String login, String password) {
        jdbc.sql("select pg_advisory_xact_lock(hashtext('first administrator'))")
                .query((row, number) -> number)
                .list();
        boolean works = links.use(token)
                .filter(behind -> behind.purpose() == Purpose.SETUP)
                .isPresent();
        if (!works || !accounts.none()) {
            return false;
        }
        accounts.create(new NewAccount(accounts.addPerson(name), login, password, Set.of(Role.ADMINISTRATOR)));
        links.forgetSetup();
        return true;
    }

    private Optional<Account> account(@Nullable UUID id) {
        return id == null ? Optional.empty() : repository.findById(id);
    }
}
