package app.ramkeeper.visits;

import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** Gives the pages of this feature their choices as {@code words}: a fragment's parameters may not name a bean. */
@ControllerAdvice("app.ramkeeper.visits")
class FormWords {

    private final VisitChoices choices;

    FormWords(VisitChoices choices) {
        this.choices = choices;
    }

    @ModelAttribute("words")
    VisitChoices words() {
        return choices;
    }
}
