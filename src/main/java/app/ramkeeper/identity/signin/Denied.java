package app.ramkeeper.identity.signin;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.stereotype.Component;

/** Answers a request that this person may not make, or that lacks the proof that it comes from our own page. */
@Component
class Denied implements AccessDeniedHandler {

    static final String BY_CSRF = Denied.class.getName() + ".csrf";

    private final Problems problems;

    Denied(Problems problems) {
        this.problems = problems;
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException reason)
            throws IOException, ServletException {
        if (response.isCommitted()) {
            return;
        }
        if (Wants.noPage(request)) {
            problems.answer(response, HttpStatus.FORBIDDEN, "This is not open to you, or your page is out of date.");
            return;
        }
        response.setStatus(HttpStatus.FORBIDDEN.value());
        request.setAttribute(BY_CSRF, reason instanceof CsrfException);
        request.getRequestDispatcher("/denied").forward(request, response);
    }
}
