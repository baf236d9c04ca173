package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.Open;
import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;

@Controller
@Open
class SignInController {

    @GetMapping("/sign-in")
    String signIn(@RequestParam(required = false) @Nullable String next, Model model) {
        model.addAttribute("next", OnSite.target(next));
        return "identity/sign-in";
    }

    /** Reached by forwards only; whoever opens it directly is told the same. */
    @RequestMapping("/denied")
    @ResponseStatus(HttpStatus.FORBIDDEN)
    String denied(HttpServletRequest request, Model model) {
        model.addAttribute("stale", Boolean.TRUE.equals(request.getAttribute(Denied.BY_CSRF)));
        return "identity/denied";
    }
}
