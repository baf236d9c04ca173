package app.ramkeeper.rounds.web;

import app.ramkeeper.rounds.week.Moved;
import app.ramkeeper.rounds.week.Stop;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekStore;
import jakarta.servlet.http.HttpServletRequest;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

    /** What a step may name that its own page shows in words. */
    private static final List<String> SAID = List.of("excuse", "reason", "at");

    private final WeekStore weeks;

    MovedAdvice(WeekStore weeks) {
        this.weeks = weeks;
    }

    @ExceptionHandler(Moved.class)
    ModelAndView moved(Moved moved, HttpServletRequest request) {
        Map<String, String[]> typed = new LinkedHashMap<>(request.getParameterMap());
        typed.remove("version");
        typed.remove("_csrf");
        ModelAndView page = new ModelAndView("rounds/moved", HttpStatus.CONFLICT);
        page.addObject("plan", moved.plan());
        page.addObject("theirs", moved.theirs());
        page.addObject("typed", typed);
        page.addObject("mine", inWords(weeks.load(moved.plan()), request.getServletPath(), typed));
        page.addObject("again", request.getServletPath());
        return page;
    }

    /** The step by the names of visits, people and days; what has no name stays in the form only. */
    private static Map<String, String> inWords(Week week, String path, Map<String, String[]> typed) {
        Map<String, String> said = new LinkedHashMap<>();
        stop(week, path.replaceFirst("/[a-z-]+$", "").replaceFirst(".*/", ""))
                .ifPresent(site -> said.put("visit", site));
        typed.forEach((name, values) -> {
            String value = values.length == 0 ? "" : values[0];
            if (name.equals("to")) {
                round(week, value).ifPresent(round -> said.put(name, round));
            } else if (name.equals("before")) {
                stop(week, value).ifPresent(site -> said.put(name, site));
            } else if (SAID.contains(name) && !value.isBlank()) {
                said.put(name, value);
            }
        });
        return said;
    }

    private static Optional<String> stop(Week week, String id) {
        return week.stops().stream()
                .filter(stop -> stop.id().toString().equals(id))
                .map(Stop::site)
                .findFirst();
    }

    private static Optional<String> round(Week week, String to) {
        return week.rounds().stream()
                .filter(round -> (round.personId() + "/" + round.day()).equals(to))
                .map(round -> round.name() + ", " + Times.day(round.day()))
                .findFirst();
    }
}
