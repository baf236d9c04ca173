package app.ramkeeper.identity.own;

import app.ramkeeper.identity.signin.SignedIn;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Changes to the ways into an account ask for a sign-in of the last minutes. */
@Configuration
class FreshSignIn implements WebMvcConfigurer, HandlerInterceptor {

    private final SignedIn signedIn;

    FreshSignIn(SignedIn signedIn) {
        this.signedIn = signedIn;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this)
                .addPathPatterns("/account/codes/**", "/account/recovery-codes/**", "/account/passkeys/**");
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
            throws IOException {
        Authentication who = SecurityContextHolder.getContext().getAuthentication();
        if (who != null && signedIn.isFresh(who)) {
            return true;
        }
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        if (accept != null && accept.contains("json") && !accept.contains("text/html")) {
            response.setStatus(HttpStatus.UNAUTHORIZED.value());
        } else {
            response.sendRedirect("/account/confirm?next="
                    + (request.getMethod().equals("GET") ? request.getServletPath() : "/account"));
        }
        return false;
    }
}
