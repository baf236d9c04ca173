package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.week.LookAhead;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The weeks ahead, and which named tasks suit another week better than that of their due date. */
@Controller
@ForOffice
class AheadPages {

    private final LookAhead ahead;
    private final Mondays mondays;

    AheadPages(LookAhead ahead, Mondays mondays) {
        this.ahead = ahead;
        this.mondays = mondays;
    }

    @GetMapping("/rounds/ahead")
    String show(@RequestParam(required = false) @Nullable LocalDate from, Model model) {
        LocalDate monday = from == null ? mondays.planned() : mondays.known(from);
        model.addAttribute("monday", monday);
        model.addAttribute("outlook", ahead.from(monday));
        return "rounds/ahead";
    }
}
