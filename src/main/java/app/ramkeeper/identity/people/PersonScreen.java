package app.ramkeeper.identity.people;

import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.Role;
import app.ramkeeper.web.Choice;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** Puts together the page about one person: facts, account, days away. */
@Component
@ForAdministrator
class PersonScreen {

    private final PersonAdmin admin;
    private final DaysAway away;
    private final AccountAdmin accounts;
    private final People people;

    PersonScreen(PersonAdmin admin, DaysAway away, AccountAdmin accounts, People people) {
        this.admin = admin;
        this.away = away;
        this.accounts = accounts;
        this.people = people;
    }

    /** Fills what is not there yet: a form with errors stays as it was typed. */
    String fill(UUID id, Model model) {
        PersonForm person = admin.read(id);
        var account = accounts.of(id);
        model.addAttribute("id", id);
        model.addAttribute("person", person);
        model.addAttribute("depot", label(people.depotChoices(), String.valueOf(person.depotId())));
        model.addAttribute(
                "skills",
                people.skills().stream()
                        .filter(skill -> person.skills().contains(skill.value()))
                        .map(Choice::label)
                        .toList());
        model.addAttribute("leave", away.of(id));
        model.addAttribute("account", account.orElse(null));
        model.addAttribute("roles", Stream.of(Role.values()).map(Role::name).toList());
        if (!model.containsAttribute("leaveForm")) {
            model.addAttribute("leaveForm", new LeaveForm(null, null, null, null));
        }
        if (!model.containsAttribute("accountForm")) {
            model.addAttribute(
                    "accountForm",
                    account.map(card -> new AccountForm(card.login(), card.roles(), card.version()))
                            .orElse(new AccountForm("", Set.of(), null)));
        }
        return "identity/person";
    }

    private static String label(List<Choice> choices, String value) {
        return choices.stream()
                .filter(choice -> choice.value().equals(value))
                .map(Choice::label)
                .findFirst()
                .orElse("");
    }
}
