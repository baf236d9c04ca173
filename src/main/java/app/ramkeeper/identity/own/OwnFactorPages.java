package app.ramkeeper.identity.own;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.signin.Enrolment;
import app.ramkeeper.identity.signin.Passkeys;
import app.ramkeeper.identity.signin.SecondFactor;
import app.ramkeeper.identity.signin.SecurityLog;
import app.ramkeeper.shared.Text;
import app.ramkeeper.web.Saved;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialCreationOptions;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Codes, recovery codes and passkeys of the own account; reached only after a fresh sign-in. */
@Controller
@ForAll
@RequestMapping("/account")
class OwnFactorPages {

    private static final String OPTIONS = "passkeyCreation";
    private static final String EVENT = "second-factor";

    private final SecondFactor factors;
    private final Enrolment enrolment;
    private final Passkeys passkeys;
    private final SecurityLog log;

    OwnFactorPages(SecondFactor factors, Enrolment enrolment, Passkeys passkeys, SecurityLog log) {
        this.factors = factors;
        this.enrolment = enrolment;
        this.passkeys = passkeys;
        this.log = log;
    }

    @GetMapping("/codes")
    String codes(@AuthenticationPrincipal CurrentUser user, HttpServletRequest request, Model model) {
        enrolment.show(request.getSession(), user.login(), model);
        model.addAttribute("action", "/account/codes");
        return "identity/enrol";
    }

    @PostMapping("/codes")
    String setUpCodes(
            @AuthenticationPrincipal CurrentUser user,
            @RequestParam @Nullable String code,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model) {
        List<String> recovery = enrolment.confirm(request.getSession(), user.account(), code == null ? "" : code);
        if (recovery.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("failed", true);
            return codes(user, request, model);
        }
        log.event(EVENT, "set up", user.login(), request.getRemoteAddr(), "code");
        model.addAttribute("recovery", recovery);
        return "identity/recovery-codes";
    }

    @PostMapping("/codes/remove")
    String removeCodes(
            @AuthenticationPrincipal CurrentUser user, HttpServletRequest request, RedirectAttributes redirect) {
        factors.removeCodes(user.account());
        log.event(EVENT, "removed", user.login(), request.getRemoteAddr(), "code");
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.codesAreNoLonger"));
        return "redirect:/account";
    }

    @PostMapping("/recovery-codes")
    String renew(@AuthenticationPrincipal CurrentUser user, HttpServletRequest request, Model model) {
        log.event(EVENT, "renewed", user.login(), request.getRemoteAddr(), "recovery codes");
        model.addAttribute("recovery", factors.renewRecoveryCodes(user.account()));
        return "identity/recovery-codes";
    }

    @GetMapping("/passkeys/new")
    String passkey() {
        return "identity/passkey";
    }

    @PostMapping("/passkeys/options")
    ResponseEntity<String> options(Authentication who, HttpServletRequest request) {
        PublicKeyCredentialCreationOptions options = passkeys.creation(who);
        request.getSession().setAttribute(OPTIONS, options);
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_JSON).body(passkeys.write(options));
    }

    @PostMapping("/passkeys")
    ResponseEntity<Void> register(
            @AuthenticationPrincipal CurrentUser user,
            @RequestBody String credential,
            @RequestParam @Nullable String label,
            HttpServletRequest request) {
        Object options = request.getSession().getAttribute(OPTIONS);
        request.getSession().removeAttribute(OPTIONS);
        if (!(options instanceof PublicKeyCredentialCreationOptions asked)) {
            return ResponseEntity.status(HttpStatus.CONFLICT).build();
        }
        try {
            passkeys.register(asked, credential, name(label));
        } catch (DataAccessException away) {
            throw away;
        } catch (RuntimeException refused) {
            log.event(EVENT, "refused", user.login(), request.getRemoteAddr(), "passkey");
            return ResponseEntity.status(HttpStatus.UNPROCESSABLE_CONTENT).build();
        }
        log.event(EVENT, "set up", user.login(), request.getRemoteAddr(), "passkey");
        return ResponseEntity.noContent().build();
    }

    @PostMapping("/passkeys/{id}/remove")
    String remove(
            @AuthenticationPrincipal CurrentUser user,
            @PathVariable String id,
            HttpServletRequest request,
            RedirectAttributes redirect) {
        passkeys.remove(user.account(), id);
        log.event(EVENT, "removed", user.login(), request.getRemoteAddr(), "passkey");
        redirect.addFlashAttribute("saved", Saved.of("identity.saved.thePasskeyIsRemoved"));
        return "redirect:/account";
    }

    private static String name(@Nullable String label) {
        String clean = Text.clean(label);
        return clean == null || clean.isEmpty() ? "Passkey" : clean.substring(0, Math.min(clean.length(), 60));
    }
}
