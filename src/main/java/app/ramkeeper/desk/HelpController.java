package app.ramkeeper.desk;

import app.ramkeeper.identity.ForAll;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** The words of the trade and how each role's day goes, at the same place on every page. */
@Controller
@ForAll
class HelpController {

    @GetMapping("/help")
    String help() {
        return "desk/help";
    }
}
