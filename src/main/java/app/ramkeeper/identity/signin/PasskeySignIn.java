package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.Open;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.web.webauthn.api.PublicKeyCredentialRequestOptions;
import org.springframework.transaction.TransactionException;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Sign-in by passkey alone: what the page's script asks. */
@RestController
@Open
@RequestMapping("/sign-in/passkey")
class PasskeySignIn {

    private static final String OPTIONS = "passkeyRequest";
    private static final String WHAT = "passkey";

    private final Passkeys passkeys;
    private final AccountUsers accounts;
    private final SignInLimits limits;
    private final SignedIn signedIn;
    private final SecurityLog log;

    PasskeySignIn(Passkeys passkeys, AccountUsers accounts, SignInLimits limits, SignedIn signedIn, SecurityLog log) {
        this.passkeys = passkeys;
        this.accounts = accounts;
        this.limits = limits;
        this.signedIn = signedIn;
        this.log = log;
    }

    @PostMapping("/options")
    ResponseEntity<String> options(HttpServletRequest request) {
        PublicKeyCredentialRequestOptions options = passkeys.request();
        request.getSession().setAttribute(OPTIONS, options);
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_JSON).body(passkeys.write(options));
    }

    @PostMapping
    ResponseEntity<?> enter(
            @RequestBody String credential,
            @RequestParam @Nullable String next,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            limits.takeFromNetwork(WHAT, request.getRemoteAddr());
        } catch (TooManyAttempts often) {
            return ResponseEntity.status(HttpStatus.TOO_MANY_REQUESTS)
                    .header(HttpHeaders.RETRY_AFTER, Long.toString(often.pause().toSeconds()))
                    .body(problem(HttpStatus.TOO_MANY_REQUESTS));
        }
        Optional<CurrentUser> user = check(credential, request);
        if (user.isEmpty()) {
            log.event("sign-in", "failed", "-", request.getRemoteAddr(), WHAT);
            return ResponseEntity.status(HttpStatus.UNAUTHORIZED).body(problem(HttpStatus.UNAUTHORIZED));
        }
        log.event("sign-in", "passed", user.get().login(), request.getRemoteAddr(), WHAT);
        signedIn.complete(user.get(), FactorGrantedAuthority.WEBAUTHN_AUTHORITY, request, response);
        return ResponseEntity.ok(Map.of("next", OnSite.target(next)));
    }

    /** The challenge is used up whatever comes of it. Why a key was refused stays inside. */
    private Optional<CurrentUser> check(String credential, HttpServletRequest request) {
        Object options = request.getSession().getAttribute(OPTIONS);
        request.getSession().removeAttribute(OPTIONS);
        if (!(options instanceof PublicKeyCredentialRequestOptions asked)) {
            return Optional.empty();
        }
        try {
            return accounts.active(passkeys.authenticate(asked, credential));
        } catch (DataAccessException | TransactionException away) {
            throw away;
        } catch (RuntimeException refused) {
            return Optional.empty();
        }
    }

    private static ProblemDetail problem(HttpStatus status) {
        return ProblemDetail.forStatusAndDetail(status, "This passkey was not accepted here.");
    }
}
