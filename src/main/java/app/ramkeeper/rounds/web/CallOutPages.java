package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.week.CallOuts;
import app.ramkeeper.rounds.week.CallOuts.InWeek;
import java.util.UUID;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/** From a call to the best places for its call-out in this week's rounds. */
@Controller
@ForOffice
class CallOutPages {

    private final CallOuts callOuts;

    CallOutPages(CallOuts callOuts) {
        this.callOuts = callOuts;
    }

    @PostMapping("/rounds/call-outs/{call}")
    String bring(@PathVariable UUID call, @AuthenticationPrincipal CurrentUser user) {
        InWeek in = callOuts.bring(call, user.person());
        return "redirect:/rounds/" + in.monday() + "/stops/" + in.stop();
    }
}
