package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.CurrentUser;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The second step of sign-in: a code of the device, a recovery code, or setting codes up for the first time. */
@Controller
@HalfSignedIn
@RequestMapping("/sign-in")
class CodePages {

    private static final String CODE = "identity/code";
    private static final String ENROL = "identity/enrol";
    private static final String WHAT = "code";

    private final SecondFactor factors;
    private final Enrolment enrolment;
    private final AccountUsers accounts;
    private final SignInLimits limits;
    private final SignedIn signedIn;
    private final SecurityLog log;

    CodePages(
            SecondFactor factors,
            Enrolment enrolment,
            AccountUsers accounts,
            SignInLimits limits,
            SignedIn signedIn,
            SecurityLog log) {
        this.factors = factors;
        this.enrolment = enrolment;
        this.accounts = accounts;
        this.limits = limits;
        this.signedIn = signedIn;
        this.log = log;
    }

    @GetMapping("/code")
    String ask(@AuthenticationPrincipal CurrentUser user, @RequestParam @Nullable String next, Model model) {
        model.addAttribute("next", OnSite.target(next));
        model.addAttribute("codes", factors.hasCodes(user.account()));
        return factors.isEnrolled(user.account()) ? CODE : "redirect:/sign-in/enrol";
    }

    @PostMapping("/code")
    String check(
            @AuthenticationPrincipal CurrentUser user,
            @RequestParam @Nullable String code,
            @RequestParam @Nullable String next,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model) {
        if (isAllowed(user, request, response, model)) {
            if (code != null && factors.check(user.account(), code)) {
                return enter(user, request, response) ? "redirect:" + OnSite.target(next) : "redirect:/sign-in";
            }
            refused(user, request, response, model);
        }
        return ask(user, next, model);
    }

    @GetMapping("/enrol")
    String enrol(@AuthenticationPrincipal CurrentUser user, HttpServletRequest request, Model model) {
        if (factors.isEnrolled(user.account())) {
            return "redirect:/sign-in/code";
        }
        enrolment.show(request.getSession(), user.login(), model);
        model.addAttribute("action", "/sign-in/enrol");
        return ENROL;
    }

    @PostMapping("/enrol")
    String confirm(
            @AuthenticationPrincipal CurrentUser user,
            @RequestParam @Nullable String code,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model) {
        if (factors.isEnrolled(user.account())) {
            return "redirect:/sign-in/code";
        }
        if (isAllowed(user, request, response, model)) {
            List<String> recovery = enrolment.confirm(request.getSession(), user.account(), code == null ? "" : code);
            if (!recovery.isEmpty()) {
                log.event("second-factor", "set up", user.login(), request.getRemoteAddr(), WHAT);
                enter(user, request, response);
                model.addAttribute("recovery", recovery);
                return "identity/recovery-codes";
            }
            refused(user, request, response, model);
        }
        return enrol(user, request, model);
    }

    private boolean enter(CurrentUser user, HttpServletRequest request, HttpServletResponse response) {
        Optional<CurrentUser> now = accounts.active(user.account());
        now.ifPresent(active -> {
            limits.forget(WHAT, active.login(), request.getRemoteAddr());
            log.event("sign-in", "passed", active.login(), request.getRemoteAddr(), WHAT);
            signedIn.complete(active, SignedIn.BY_CODE, request, response);
        });
        return now.isPresent();
    }

    private void refused(CurrentUser user, HttpServletRequest request, HttpServletResponse response, Model model) {
        log.event("sign-in", "failed", user.login(), request.getRemoteAddr(), WHAT);
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("failed", true);
    }

    private boolean isAllowed(CurrentUser user, HttpServletRequest request, HttpServletResponse response, Model model) {
        try {
            limits.take(WHAT, user.login(), request.getRemoteAddr());
            return true;
        } catch (TooManyAttempts often) {
            response.setStatus(HttpStatus.TOO_MANY_REQUESTS.value());
            response.setHeader(
                    HttpHeaders.RETRY_AFTER, Long.toString(often.pause().toSeconds()));
            model.addAttribute("pause", often.pause().toSeconds());
            return false;
        }
    }
}
