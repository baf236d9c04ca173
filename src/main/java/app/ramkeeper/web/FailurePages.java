package app.ramkeeper.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import org.springframework.boot.webmvc.autoconfigure.error.ErrorViewResolver;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;

/** Pages for failures before any controller is reached, such as an address the firewall refuses. */
@Component
class FailurePages implements ErrorViewResolver {

    @Override
    public ModelAndView resolveErrorView(HttpServletRequest request, HttpStatus status, Map<String, Object> model) {
        String view = switch (status) {
            case NOT_FOUND -> "missing";
            case SERVICE_UNAVAILABLE -> "unavailable";
            default -> status.is4xxClientError() ? "refused" : "failed";
        };
        return new ModelAndView("error/" + view, Map.of(), status);
    }
}
