package app.ramkeeper.identity.people;

import app.ramkeeper.identity.AccountId;
import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.signin.LinkMail;
import app.ramkeeper.identity.signin.LinkText;
import app.ramkeeper.identity.signin.OneTimeLinks;
import app.ramkeeper.identity.signin.OneTimeLinks.Purpose;
import app.ramkeeper.identity.signin.OwnSessions;
import app.ramkeeper.identity.signin.SecondFactor;
import app.ramkeeper.identity.signin.SecurityLog;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The administrator's work on accounts. Whatever takes rights away ends the account's sessions in the same transaction. */
@Service
@Transactional
@ForAdministrator
class AccountAdmin {

    /** An account as the person's page shows it. */
    record Card(
            UUID id,
            String login,
            Set<Role> roles,
            boolean disabled,
            boolean hasPassword,
            boolean hasFactor,
            int version) {}

    /** What became of a link: sent by mail, or to be handed over by the administrator. */
    record Sent(@Nullable String link, @Nullable String mailedTo) {}

    private final AccountRepository accounts;
    private final PersonRepository people;
    private final OneTimeLinks links;
    private final LinkMail mail;
    private final OwnSessions sessions;
    private final SecondFactor factors;
    private final SecurityLog log;
    private final JdbcClient jdbc;
    private final Clock clock;

    AccountAdmin(
            AccountRepository accounts,
            PersonRepository people,
            OneTimeLinks links,
            LinkMail mail,
            OwnSessions sessions,
            SecondFactor factors,
            SecurityLog log,
            JdbcClient jdbc,
            Clock clock) {
        this.accounts = accounts;
        this.people = people;
        this.links = links;
        this.mail = mail;
        this.sessions = sessions;
        this.factors = factors;
        this.log = log;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    Optional<Card> of(UUID person) {
        return accounts.findByPersonId(person)
                .map(account -> new Card(
                        account.id(),
                        account.login(),
                        account.roles(),
                        account.isDisabled(),
                        account.hasPassword(),
                        factors.isEnrolled(account.id()),
                        account.version()));
    }

    /** Gives the person an account and a link to set its password. */
    Sent invite(UUID personId, AccountForm form) {
        Person person = people.findById(personId).orElseThrow(() -> new Missing("person", personId));
        Account account = new Account(AccountId.next().value(), personId, form.login(), form.roles());
        accounts.saveAndFlush(account);
        tell("account", "made", account, form.roles().toString());
        return send(Purpose.INVITE, account, person);
    }

    /** Sends a link for a new password, or the invitation again. */
    Sent sendLink(UUID personId) {
        Account account = find(personId);
        Person person = people.findById(personId).orElseThrow(() -> new Missing("person", personId));
        if (account.isDisabled()) {
            throw new Conflict("The account is disabled. Enable it first.");
        }
        tell("link", "made", account, "");
        return send(account.hasPassword() ? Purpose.RESET : Purpose.INVITE, account, person);
    }

    void change(UUID personId, AccountForm form) {
        Account account = find(personId);
        if (form.version() == null || form.version() != account.version()) {
            throw new OptimisticLockingFailureException("The account was changed meanwhile");
        }
        if (!form.roles().contains(Role.ADMINISTRATOR)) {
            keepAnAdministrator(account);
        }
        sessions.endAll(account.login(), null);
        account.rename(form.login());
        account.give(form.roles());
        accounts.save(account);
        tell("roles", "changed", account, form.roles().toString());
    }

    void disable(UUID personId) {
        Account account = find(personId);
        keepAnAdministrator(account);
        account.disable(clock.instant());
        accounts.save(account);
        links.forget(account.id());
        sessions.endAll(account.login(), null);
        tell("account", "disabled", account, "");
    }

    void enable(UUID personId) {
        Account account = find(personId);
        account.enable();
        accounts.save(account);
        tell("account", "enabled", account, "");
    }

    /** Takes away codes, recovery codes and passkeys of somebody who lost them; the next sign-in sets them up anew. */
    void removeFactors(UUID personId) {
        Account account = find(personId);
        factors.removeAll(account.id());
        sessions.endAll(account.login(), null);
        tell("second-factor", "removed", account, "");
    }

    private Sent send(Purpose purpose, Account account, Person person) {
        String link = links.make(purpose, account.id());
        String address = person.email();
        if (address == null || !mail.isConfigured()) {
            return new Sent(link, null);
        }
        mail.send(address, LinkText.SUBJECT, LinkText.of(link, links.lifetime(purpose)));
        return new Sent(null, address);
    }

    private Account find(UUID personId) {
        return accounts.findByPersonId(personId).orElseThrow(() -> new Missing("account", personId));
    }

    /** Without an administrator nobody could let one in again. The lock makes two at once wait for each other. */
    private void keepAnAdministrator(Account leaving) {
        boolean another = jdbc.sql("""
                        select a.id from accounts a join account_roles r on r.account_id = a.id
                        where r.role = 'ADMINISTRATOR' and a.disabled_at is null order by a.id for update of a""").query(UUID.class).list().stream().anyMatch(id -> !id.equals(leaving.id()));
        if (leaving.roles().contains(Role.ADMINISTRATOR) && !another) {
            throw new Conflict("This is the last administrator who can sign in. Make somebody else one first.");
        }
    }

    private void tell(String what, String result, Account account, String detail) {
        var who = SecurityContextHolder.getContext().getAuthentication();
        log.event(what, result, who == null ? "-" : who.getName(), null, account.login() + " " + detail);
    }
}
