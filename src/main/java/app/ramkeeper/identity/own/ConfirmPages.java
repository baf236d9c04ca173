package app.ramkeeper.identity.own;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.signin.OnSite;
import app.ramkeeper.identity.signin.SignedIn;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Asks for the password again before ways in are changed. */
@Controller
@ForAll
@RequestMapping("/account/confirm")
class ConfirmPages {

    private final OwnPassword passwords;
    private final SignedIn signedIn;

    ConfirmPages(OwnPassword passwords, SignedIn signedIn) {
        this.passwords = passwords;
        this.signedIn = signedIn;
    }

    @GetMapping
    String ask(@RequestParam @Nullable String next, Model model) {
        model.addAttribute("next", OnSite.target(next));
        return "identity/confirm";
    }

    @PostMapping
    String confirm(
            @AuthenticationPrincipal CurrentUser user,
            @RequestParam @Nullable String next,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model) {
        if (passwords.isRight(user, request.getParameter("password"), request.getRemoteAddr())) {
            signedIn.refresh(FactorGrantedAuthority.PASSWORD_AUTHORITY, request, response);
            return "redirect:" + OnSite.target(next);
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("wrong", true);
        return ask(next, model);
    }
}
