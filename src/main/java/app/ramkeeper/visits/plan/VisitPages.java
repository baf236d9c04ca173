package app.ramkeeper.visits.plan;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.SiteCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.Answer;
import app.ramkeeper.visits.ContactBy;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitState;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.springframework.web.util.UriComponentsBuilder;

/** The list of visits, and one visit with what its customer answered. */
@Controller
@ForOffice
class VisitPages {

    private final PlanPagesQuery query;
    private final Visits visits;
    private final Fleet fleet;

    VisitPages(PlanPagesQuery query, Visits visits, Fleet fleet) {
        this.query = query;
        this.visits = visits;
        this.fleet = fleet;
    }

    @GetMapping("/visits")
    ModelAndView list(
            @ModelAttribute VisitFilter visitFilter,
            BindingResult unreadable,
            @RequestParam(required = false) @Nullable String after,
            @RequestParam MultiValueMap<String, String> asked,
            Model model) {
        if (unreadable.hasErrors()) {
            model.addAttribute("unreadable", true);
        }
        boolean plain = unreadable.hasErrors() || (visitFilter.isEmpty() && !asked.containsKey("state"));
        VisitFilter filter = plain ? VisitFilter.planned() : visitFilter;
        ModelAndView page = new ModelAndView("visits/list", model.asMap());
        page.addObject("filter", filter);
        page.addObject("slice", query.list(filter, after));
        return page;
    }

    @GetMapping("/visits/{id}")
    @ForField
    String show(@PathVariable UUID id, Model model) {
        return show(id, new TypedForm(), model);
    }

    private String show(UUID id, TypedForm form, Model model) {
        PlanPagesQuery.Row visit = query.byId(id).orElseThrow(() -> new Missing("visit", id));
        SiteCard site = fleet.site(new SiteId(visit.site()));
        model.addAttribute("visit", visit);
        model.addAttribute("site", site);
        model.addAttribute("closed", visit.on() == null ? null : site.closedOn(visit.on()));
        model.addAttribute("again", again(visit));
        model.addAttribute("attempts", query.attempts(id));
        model.addAttribute("form", form);
        return "visits/visit";
    }

    /** Where a visit that came to nothing is planned anew with the same tasks; null for one that stands or was done. */
    private @Nullable String again(PlanPagesQuery.Row visit) {
        if (visit.state() != VisitState.CANCELLED && visit.state() != VisitState.COULD_NOT) {
            return null;
        }
        return UriComponentsBuilder.fromPath("/visits/new")
                .queryParam("site", visit.site())
                .queryParam("task", query.tasks(visit.id()))
                .toUriString();
    }

    @PostMapping("/visits/{id}/answers")
    ModelAndView answered(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        TypedForm form = new TypedForm(posted);
        ContactBy how = form.choice("how", ContactBy.class);
        Answer answer = form.choice("answer", Answer.class);
        String said = form.text("said");
        if (how == null) {
            form.problem("how", "Say how you tried to reach them.");
        }
        if (answer == null || answer == Answer.NONE) {
            form.problem("answer", "Say what came of it.");
        }
        if (form.hasProblems() || how == null || answer == null) {
            return Saving.again(show(id, form, model), model);
        }
        visits.answered(new VisitId(id), how, answer, said, new PersonId(user.person()));
        flash.addFlashAttribute("saved", Saved.of("visits.saved.putDown"));
        return new ModelAndView("redirect:/visits/" + id);
    }

    @PostMapping("/visits/{id}/cancel")
    ModelAndView cancel(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        String reason = form.text("cancelReason", 1_000);
        if (reason == null) {
            form.problem("cancelReason", "Say why the visit is cancelled.");
        }
        if (form.hasProblems() || reason == null) {
            return Saving.again(show(id, form, model), model);
        }
        try {
            visits.cancel(new VisitId(id), reason);
        } catch (Conflict over) {
            form.problem("cancelReason", String.valueOf(over.getMessage()));
            return Saving.again(show(id, form, model), model);
        }
        flash.addFlashAttribute("saved", Saved.of("visits.saved.cancelledItsTasksStay"));
        return new ModelAndView("redirect:/visits/" + id);
    }
}
