package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.out.DueBack;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.Saved;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The office has heard from somebody who was missed. */
@Controller
@ForOffice
class BackPages {

    private final DueBack dueBack;
    private final People people;

    BackPages(DueBack dueBack, People people) {
        this.dueBack = dueBack;
        this.people = people;
    }

    @PostMapping("/rounds/back/{person}")
    String heard(@PathVariable UUID person, RedirectAttributes flash) {
        String name = people.byId(new PersonId(person))
                .orElseThrow(() -> new Missing("person", person))
                .name();
        dueBack.heardFrom(new PersonId(person));
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.isBack", name));
        return "redirect:/";
    }
}
