package app.ramkeeper.identity.people;

import app.ramkeeper.identity.AccountId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Makes people and accounts from inside the application: the trial run's and the first administrator's. */
@Service
public class Accounts {

    /**
     * A person with a way in.
     *
     * @param password as it is typed at sign-in; null if it is set later through a one-time link
     */
    public record NewAccount(
            PersonId person, String login, @Nullable String password, Set<Role> roles) {}

    private final PersonRepository people;
    private final AccountRepository accounts;
    private final PasswordEncoder encoder;

    Accounts(PersonRepository people, AccountRepository accounts, PasswordEncoder encoder) {
        this.people = people;
        this.accounts = accounts;
        this.encoder = encoder;
    }

    /** Whether anybody can sign in yet. */
    @Transactional(readOnly = true)
    public boolean none() {
        return accounts.count() == 0;
    }

    /** Adds a person of the company. */
    @Transactional
    public PersonId addPerson(String name) {
        PersonId id = PersonId.next();
        people.save(new Person(id.value(), name));
        return id;
    }

    /** Adds somebody whom only an imported history names. */
    @Transactional
    public PersonId addPersonOfHistory(String name) {
        PersonId id = PersonId.next();
        people.save(Person.ofHistory(id.value(), name));
        return id;
    }

    /** Gives a person an account. */
    @Transactional
    public AccountId create(NewAccount wanted) {
        AccountId id = AccountId.next();
        Account account = new Account(id.value(), wanted.person().value(), wanted.login(), wanted.roles());
        if (wanted.password() != null) {
            account.password(encoder.encode(wanted.password()));
        }
        accounts.save(account);
        return id;
    }
}
