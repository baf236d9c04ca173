package app.ramkeeper.identity.trail;

import app.ramkeeper.identity.ForAdministrator;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/** Who changed what, readable. */
@Controller
@ForAdministrator
class TrailPages {

    private final Trail trail;

    TrailPages(Trail trail) {
        this.trail = trail;
    }

    @GetMapping("/audit")
    String show(@ModelAttribute("filter") TrailFilter filter, @RequestParam @Nullable String after, Model model) {
        model.addAttribute("slice", trail.page(filter, after));
        model.addAttribute("tables", trail.tables());
        model.addAttribute("after", after);
        return "identity/trail";
    }
}
