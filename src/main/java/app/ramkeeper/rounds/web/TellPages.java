package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.out.Telling;
import app.ramkeeper.rounds.out.Telling.ToTell;
import app.ramkeeper.rounds.week.WeekPlan;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.Answer;
import app.ramkeeper.visits.ContactBy;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Telling the customers of a published week, and putting down what they say. */
@Controller
@ForOffice
class TellPages {

    private final WeekStore weeks;
    private final Telling telling;
    private final Visits visits;
    private final VisitChoices words;
    private final Mondays mondays;

    TellPages(WeekStore weeks, Telling telling, Visits visits, VisitChoices words, Mondays mondays) {
        this.weeks = weeks;
        this.telling = telling;
        this.visits = visits;
        this.words = words;
        this.mondays = mondays;
    }

    /** A visit with the words to say. */
    public record Row(ToTell visit, String message) {}

    /**
     * A day's visits, or those that stand otherwise than their customers agreed to, which come before all days.
     *
     * @param on the day; null for what was agreed otherwise
     * @param open who is still to be told
     * @param settled who was told or has answered
     */
    public record Part(@Nullable LocalDate on, List<Row> open, List<Row> settled) {
        static Part of(@Nullable LocalDate on, List<Row> rows) {
            return new Part(
                    on,
                    rows.stream().filter(row -> row.visit().open()).toList(),
                    rows.stream().filter(row -> !row.visit().open()).toList());
        }

        public String anchor() {
            return "d-" + (on == null ? "agreed" : on);
        }
    }

    @GetMapping("/rounds/{monday}/customers")
    String list(@PathVariable LocalDate monday, Model model) {
        return show(plan(monday), new TypedForm(), model);
    }

    private String show(WeekPlan plan, TypedForm form, Model model) {
        List<Row> rows = telling.of(plan).stream()
                .map(visit -> new Row(visit, telling.message(visit)))
                .toList();
        model.addAttribute("monday", plan.monday());
        model.addAttribute("plan", plan);
        model.addAttribute("parts", parts(rows));
        model.addAttribute(
                "mailable",
                telling.canMail()
                        && rows.stream()
                                .anyMatch(r -> r.visit().open() && r.visit().email() != null));
        model.addAttribute("canMail", telling.canMail());
        model.addAttribute("form", form);
        return "rounds/customers";
    }

    private static List<Part> parts(List<Row> rows) {
        List<Part> parts = new ArrayList<>();
        List<Row> agreedOtherwise =
                rows.stream().filter(row -> row.visit().hadAgreedOn() != null).toList();
        if (!agreedOtherwise.isEmpty()) {
            parts.add(Part.of(null, agreedOtherwise));
        }
        Map<LocalDate, List<Row>> days = rows.stream()
                .filter(row -> !agreedOtherwise.contains(row))
                .collect(Collectors.groupingBy(row -> row.visit().on(), TreeMap::new, Collectors.toList()));
        days.forEach((day, those) -> parts.add(Part.of(day, those)));
        return parts;
    }

    @PostMapping("/rounds/{monday}/customers/mails")
    String mail(
            @PathVariable LocalDate monday,
            @RequestParam(required = false) @Nullable List<UUID> visit,
            @AuthenticationPrincipal CurrentUser user,
            RedirectAttributes flash) {
        int sent = telling.mail(plan(monday), visit == null ? List.of() : visit, new PersonId(user.person()));
        flash.addFlashAttribute(
                "saved",
                sent == 0 ? Saved.of("rounds.saved.nobodyWasTickedWho") : Saved.of("rounds.saved.mailsSent", sent));
        return "redirect:/rounds/" + monday + "/customers";
    }

    @PostMapping("/rounds/{monday}/customers/{visit}")
    ModelAndView answered(
            @PathVariable LocalDate monday,
            @PathVariable UUID visit,
            @RequestParam MultiValueMap<String, String> posted,
            @AuthenticationPrincipal CurrentUser user,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        Answer answer = form.choice("answer", Answer.class);
        ContactBy how = form.choice("how", ContactBy.class);
        if (answer == null || answer == Answer.NONE) {
            form.problem("answer", "Say what came of it.");
        }
        if (form.hasProblems() || answer == null) {
            return Saving.again(show(plan(monday), form, model), model);
        }
        visits.answered(
                new VisitId(visit), how == null ? ContactBy.PHONE : how, answer, null, new PersonId(user.person()));
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.putDown", words.word("answer", answer)));
        return new ModelAndView("redirect:/rounds/" + monday + "/customers" + dayOf(plan(monday), visit));
    }

    /** So that the page goes on at the visit's day. */
    private String dayOf(WeekPlan plan, UUID visit) {
        return telling.of(plan).stream()
                .filter(told -> told.visit().equals(visit))
                .map(told -> "#d-" + told.on())
                .findFirst()
                .orElse("");
    }

    private WeekPlan plan(LocalDate monday) {
        return weeks.plan(mondays.known(monday)).orElseThrow(() -> new Missing("week", monday));
    }
}
