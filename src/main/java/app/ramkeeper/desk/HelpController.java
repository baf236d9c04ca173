package app.ramkeeper.desk;

import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** The words of the trade and how each role's day goes, at the same place on every page. */
@Controller
@PreAuthorize("isAuthenticated()")
class HelpController {

    @GetMapping("/help")
    String help() {
        return "desk/help";
    }
}
