package app.ramkeeper.identity.own;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.signin.OwnSessions;
import app.ramkeeper.identity.signin.Passkeys;
import app.ramkeeper.identity.signin.SecondFactor;
import app.ramkeeper.web.Saved;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The own account: what is set up, the password, and the sessions. */
@Controller
@ForAll
@RequestMapping("/account")
class OwnAccountPages {

    private final OwnPassword passwords;
    private final OwnSessions sessions;
    private final SecondFactor factors;
    private final Passkeys passkeys;

    OwnAccountPages(OwnPassword passwords, OwnSessions sessions, SecondFactor factors, Passkeys passkeys) {
        this.passwords = passwords;
        this.sessions = sessions;
        this.factors = factors;
        this.passkeys = passkeys;
    }

    @GetMapping
    String show(@AuthenticationPrincipal CurrentUser user, HttpServletRequest request, Model model) {
        model.addAttribute("user", user);
        model.addAttribute("codes", factors.hasCodes(user.account()));
        model.addAttribute("recoveryLeft", factors.recoveryCodesLeft(user.account()));
        model.addAttribute("passkeys", passkeys.of(user.account()));
        model.addAttribute(
                "sessions", sessions.of(user.login(), request.getSession().getId()));
        model.addAttribute("most", OwnSessions.MOST);
        return "identity/account";
    }

    /** Passwords are read as they were typed, past the cleaning that other texts get. */
    @PostMapping("/password")
    String password(
            @AuthenticationPrincipal CurrentUser user,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model,
            RedirectAttributes redirect) {
        String wanted = Optional.ofNullable(request.getParameter("newPassword")).orElse("");
        Optional<String> objection = passwords.objection(user, wanted);
        if (objection.isEmpty() && passwords.isRight(user, request.getParameter("password"), request.getRemoteAddr())) {
            passwords.change(user, wanted, request.getSession().getId(), request.getRemoteAddr());
            redirect.addFlashAttribute("saved", Saved.of("identity.saved.passwordChangedYourOther"));
            return "redirect:/account";
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("objection", objection.orElse(null));
        model.addAttribute("wrong", objection.isEmpty());
        return show(user, request, model);
    }

    @PostMapping("/sessions/{handle}/end")
    String end(@AuthenticationPrincipal CurrentUser user, @PathVariable String handle, RedirectAttributes redirect) {
        boolean ended = sessions.end(user.login(), handle);
        redirect.addFlashAttribute(
                "saved",
                ended ? Saved.of("identity.saved.thatSessionIsEnded") : Saved.of("identity.saved.thatSessionHadEnded"));
        return "redirect:/account";
    }

    @PostMapping("/sessions/end-others")
    String endOthers(
            @AuthenticationPrincipal CurrentUser user, HttpServletRequest request, RedirectAttributes redirect) {
        sessions.endAll(user.login(), request.getSession().getId());
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.allOtherSessionsAre"));
        return "redirect:/account";
    }
}
