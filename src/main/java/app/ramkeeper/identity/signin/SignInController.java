package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.Open;
import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestAttribute;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;

@Controller
@Open
class SignInController {

    @GetMapping("/sign-in")
    String signIn(@RequestParam(required = false) @Nullable String next, Model model) {
        return page(next, false, model);
    }

    /** Reached by a forward after a refused sign-in: the same page with what was typed. */
    @RequestMapping("/sign-in/refused")
    String refused(
            @RequestParam(required = false) @Nullable String next,
            @RequestParam(required = false) @Nullable String login,
            @RequestAttribute(required = false) @Nullable Long pause,
            Model model) {
        model.addAttribute("login", login);
        model.addAttribute("pause", pause);
        return page(next, pause == null, model);
    }

    /** Reached by forwards only; whoever opens it directly is told the same. */
    @RequestMapping("/denied")
    @ResponseStatus(HttpStatus.FORBIDDEN)
    String denied(HttpServletRequest request, Model model) {
        model.addAttribute("stale", Boolean.TRUE.equals(request.getAttribute(Denied.BY_CSRF)));
        return "identity/denied";
    }

    private static String page(@Nullable String next, boolean failed, Model model) {
        model.addAttribute("failed", failed);
        model.addAttribute("next", OnSite.target(next));
        return "identity/sign-in";
    }
}
