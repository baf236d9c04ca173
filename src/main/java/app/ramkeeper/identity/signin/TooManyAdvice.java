package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletResponse;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;

/** Answers what was tried too often, on pages other than sign-in itself. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class TooManyAdvice {

    @ExceptionHandler(TooManyAttempts.class)
    String tooMany(TooManyAttempts often, HttpServletResponse response, Model model) {
        response.setStatus(HttpStatus.TOO_MANY_REQUESTS.value());
        response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(often.pause().toSeconds()));
        model.addAttribute("pause", often.pause().toSeconds());
        return "identity/too-many";
    }
}
