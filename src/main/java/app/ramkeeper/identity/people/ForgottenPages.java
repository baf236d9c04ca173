package app.ramkeeper.identity.people;

import app.ramkeeper.identity.Open;
import app.ramkeeper.identity.signin.LinkMail;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** For somebody who forgot the password. */
@Controller
@Open
@RequestMapping("/sign-in/forgotten")
class ForgottenPages {

    private static final String PAGE = "identity/forgotten";

    private final Forgotten forgotten;
    private final LinkMail mail;

    ForgottenPages(Forgotten forgotten, LinkMail mail) {
        this.forgotten = forgotten;
        this.mail = mail;
    }

    @GetMapping
    String show(Model model) {
        model.addAttribute("mail", mail.isConfigured());
        return PAGE;
    }

    @PostMapping
    String ask(
            @RequestParam @Nullable String who, HttpServletRequest request, HttpServletResponse response, Model model) {
        model.addAttribute("mail", mail.isConfigured());
        if (who == null) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("missing", true);
            return PAGE;
        }
        forgotten.ask(who, request.getRemoteAddr());
        model.addAttribute("asked", true);
        return PAGE;
    }
}
