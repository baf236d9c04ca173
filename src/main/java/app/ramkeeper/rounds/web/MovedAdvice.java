package app.ramkeeper.rounds.web;

import app.ramkeeper.rounds.week.Moved;
import jakarta.servlet.http.HttpServletRequest;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.servlet.ModelAndView;

/** Two planners at once: shows what the other did and offers one's own step again, so that neither loses anything. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class MovedAdvice {

    @ExceptionHandler(Moved.class)
    ModelAndView moved(Moved moved, HttpServletRequest request) {
        Map<String, String[]> typed = new LinkedHashMap<>(request.getParameterMap());
        typed.remove("version");
        typed.remove("_csrf");
        ModelAndView page = new ModelAndView("rounds/moved", HttpStatus.CONFLICT);
        page.addObject("plan", moved.plan());
        page.addObject("theirs", moved.theirs());
        page.addObject("typed", typed);
        page.addObject("again", request.getServletPath());
        return page;
    }
}
