package app.ramkeeper.identity.people;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.signin.OneTimeLinks;
import app.ramkeeper.identity.signin.OwnSessions;
import app.ramkeeper.identity.signin.SecondFactor;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import java.sql.Array;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Forgets a person who has left: what they did stays in the register under a number, who they were goes, in the trail of
 * changes too.
 */
@Service
@ForAdministrator
class Erasure {

    private final PersonRepository people;
    private final AccountRepository accounts;
    private final SecondFactor factors;
    private final OneTimeLinks links;
    private final OwnSessions sessions;
    private final JdbcTemplate jdbc;

    Erasure(
            PersonRepository people,
            AccountRepository accounts,
            SecondFactor factors,
            OneTimeLinks links,
            OwnSessions sessions,
            JdbcTemplate jdbc) {
        this.people = people;
        this.accounts = accounts;
        this.factors = factors;
        this.links = links;
        this.sessions = sessions;
        this.jdbc = jdbc;
    }

    /** Erases the person; the name typed again shows that it is meant. */
    @Transactional
    public void erase(UUID id, String typedName, CurrentUser by) {
        Person person = people.findById(id).orElseThrow(() -> new Missing("person", id));
        if (!person.name().equals(typedName)) {
            throw new Conflict("Type the name exactly as it stands here to erase the person.");
        }
        if (id.equals(by.person())) {
            throw new Conflict("Nobody can erase themselves. Ask another administrator.");
        }
        String number = "erased-" + id.toString().substring(24);
        List<String> words = new ArrayList<>(personalWords(person.form(Set.of())));
        String login = number;
        var account = accounts.findByPersonId(id);
        if (account.isPresent()) {
            if (!account.get().isDisabled()) {
                throw new Conflict("Disable the account first.");
            }
            login = account.get().login();
            words.add(login);
            factors.removeAll(account.get().id());
            links.forget(account.get().id());
            sessions.endAll(login, null);
            account.get().rename(number);
            account.get().password(null);
            accounts.save(account.get());
        }
        person.forget(number);
        people.save(person);
        accounts.flush();
        jdbc.update("delete from person_leave where person_id = ?", id);
        blotOut(words, login, number);
    }

    private static List<String> personalWords(PersonForm form) {
        return Stream.of(
                        form.name(),
                        form.phone(),
                        form.email(),
                        form.vehicle(),
                        form.nextOfKin(),
                        form.nextOfKinPhone())
                .filter(Objects::nonNull)
                .toList();
    }

    private void blotOut(List<String> words, String login, String number) {
        ConnectionCallback<Array> asArray =
                (Connection connection) -> connection.createArrayOf("text", words.toArray());
        jdbc.query("select blot_out(?, ?, ?)", row -> {}, jdbc.execute(asArray), login, number);
    }
}
