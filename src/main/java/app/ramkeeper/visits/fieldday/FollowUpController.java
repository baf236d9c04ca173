package app.ramkeeper.visits.fieldday;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.web.Saved;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The button "done" beside what was promised or left to do. */
@Controller
@ForField
class FollowUpController {

    private final FollowUps followUps;

    FollowUpController(FollowUps followUps) {
        this.followUps = followUps;
    }

    @PostMapping("/follow-ups/{id}/done")
    String done(@PathVariable UUID id, RedirectAttributes flash) {
        SiteId site = followUps.done(id);
        flash.addFlashAttribute("saved", Saved.of("visits.saved.doneAndOffThe"));
        return "redirect:/sites/" + site + "/sheet";
    }
}
