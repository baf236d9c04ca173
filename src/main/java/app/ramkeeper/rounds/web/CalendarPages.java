package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.Open;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.signin.SignInLimits;
import app.ramkeeper.rounds.out.CalendarLinks;
import app.ramkeeper.rounds.out.RoundCalendar;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.Saved;
import jakarta.servlet.http.HttpServletRequest;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Rounds in a calendar: one's own link, the office's list of all links, and the feed behind a link. */
@Controller
class CalendarPages {

    private final CalendarLinks links;
    private final RoundCalendar calendar;
    private final People people;
    private final SignInLimits limits;

    CalendarPages(CalendarLinks links, RoundCalendar calendar, People people, SignInLimits limits) {
        this.links = links;
        this.calendar = calendar;
        this.people = people;
        this.limits = limits;
    }

    @GetMapping("/my-day/calendar")
    @ForField
    String own(@AuthenticationPrincipal CurrentUser user, Model model) {
        model.addAttribute("since", links.since(new PersonId(user.person())).orElse(null));
        return "rounds/calendar";
    }

    @PostMapping("/my-day/calendar")
    @ForField
    String make(@AuthenticationPrincipal CurrentUser user, RedirectAttributes flash) {
        flash.addFlashAttribute("address", links.make(new PersonId(user.person())));
        return "redirect:/my-day/calendar";
    }

    @PostMapping("/my-day/calendar/revoke")
    @ForField
    String revoke(@AuthenticationPrincipal CurrentUser user, RedirectAttributes flash) {
        links.revoke(new PersonId(user.person()));
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.theLinkNoLonger"));
        return "redirect:/my-day/calendar";
    }

    @GetMapping("/rounds/calendars")
    @ForOffice
    String all(Model model) {
        model.addAttribute("holders", links.all());
        return "rounds/calendars";
    }

    @PostMapping("/rounds/calendars/{person}")
    @ForOffice
    String makeFor(@PathVariable UUID person, RedirectAttributes flash) {
        PersonId holder = known(person);
        flash.addFlashAttribute("address", links.make(holder));
        flash.addFlashAttribute("holder", people.byId(holder).orElseThrow().name());
        return "redirect:/rounds/calendars";
    }

    @PostMapping("/rounds/calendars/{person}/revoke")
    @ForOffice
    String revokeOf(@PathVariable UUID person, RedirectAttributes flash) {
        links.revoke(known(person));
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.theLinkNoLonger"));
        return "redirect:/rounds/calendars";
    }

    private PersonId known(UUID person) {
        return people.byId(new PersonId(person))
                .orElseThrow(() -> new Missing("person", person))
                .personId();
    }

    /** The feed; a wrong secret looks like a page that does not exist, and guessing is slowed by network. */
    @GetMapping("/calendar/{token}/rounds.ics")
    @Open
    ResponseEntity<byte[]> feed(@PathVariable String token, HttpServletRequest request) {
        limits.takeFromNetwork("calendar", request.getRemoteAddr());
        PersonId person = links.behind(token).orElseThrow(() -> new Missing("calendar", "link"));
        return ResponseEntity.ok()
                .contentType(new MediaType("text", "calendar", StandardCharsets.UTF_8))
                .header("X-Content-Type-Options", "nosniff")
                .header("X-Robots-Tag", "noindex, nofollow")
                .body(calendar.of(person));
    }
}
