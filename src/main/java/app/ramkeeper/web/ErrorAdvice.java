package app.ramkeeper.web;

import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import jakarta.servlet.http.HttpServletRequest;
import java.util.LinkedHashMap;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.TypeMismatchException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.CannotAcquireLockException;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.dao.QueryTimeoutException;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.web.ErrorResponse;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.View;
import org.springframework.web.servlet.view.json.JacksonJsonView;

/** The one place that turns failures into pages. Each page carries a reference number that finds the log entry. */
@ControllerAdvice
@Order(Ordered.HIGHEST_PRECEDENCE)
class ErrorAdvice {

    private static final Logger LOG = LoggerFactory.getLogger(ErrorAdvice.class);

    private final DatabaseRules rules;

    ErrorAdvice(DatabaseRules rules) {
        this.rules = rules;
    }

    @ExceptionHandler(Missing.class)
    ModelAndView missing(Missing failure) {
        return page(HttpStatus.NOT_FOUND, "missing", Map.of("thing", failure.thing()));
    }

    @ExceptionHandler(Conflict.class)
    ModelAndView conflict(Conflict failure) {
        return page(HttpStatus.CONFLICT, "conflict", Map.of("sentence", String.valueOf(failure.getMessage())));
    }

    @ExceptionHandler(OptimisticLockingFailureException.class)
    ModelAndView lostUpdate(OptimisticLockingFailureException failure) {
        return page(
                HttpStatus.CONFLICT,
                "conflict",
                Map.of(
                        "sentence",
                        "Somebody else changed this meanwhile. Go back, reload the page and make the change again."));
    }

    @ExceptionHandler(DataIntegrityViolationException.class)
    ModelAndView ruleBroken(DataIntegrityViolationException failure, HttpServletRequest request) {
        return rules.sentence(failure)
                .map(sentence -> page(HttpStatus.CONFLICT, "conflict", Map.of("sentence", sentence)))
                .orElseGet(() -> logged(HttpStatus.CONFLICT, "conflict", failure, request));
    }

    /** An id in the address that is no id names nothing; any other unreadable parameter is a bad request. */
    @ExceptionHandler(MethodArgumentTypeMismatchException.class)
    ModelAndView unreadable(MethodArgumentTypeMismatchException failure) {
        boolean inPath = failure.getParameter().hasParameterAnnotation(PathVariable.class);
        return inPath
                ? page(HttpStatus.NOT_FOUND, "missing", Map.of("thing", "page"))
                : page(HttpStatus.BAD_REQUEST, "refused", Map.of("thing", "page"));
    }

    @ExceptionHandler({
        DataAccessResourceFailureException.class,
        CannotCreateTransactionException.class,
        CannotAcquireLockException.class,
        QueryTimeoutException.class
    })
    ModelAndView databaseAway(Exception failure, HttpServletRequest request) {
        if (RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes
                && attributes.getResponse() != null) {
            attributes.getResponse().setHeader(HttpHeaders.RETRY_AFTER, "5");
        }
        return logged(HttpStatus.SERVICE_UNAVAILABLE, "unavailable", failure, request);
    }

    @ExceptionHandler({TypeMismatchException.class, HttpMessageNotReadableException.class, MultipartException.class})
    ModelAndView unreadable(Exception failure) {
        return failure instanceof ErrorResponse known
                ? page(known.getStatusCode(), "refused", Map.of())
                : page(HttpStatus.BAD_REQUEST, "refused", Map.of());
    }

    @ExceptionHandler(Exception.class)
    ModelAndView any(Exception failure, HttpServletRequest request) throws Exception {
        if (failure instanceof AccessDeniedException || failure instanceof AuthenticationException) {
            throw failure;
        }
        if (DatabaseAway.causes(failure)) {
            return databaseAway(failure, request);
        }
        if (failure instanceof ErrorResponse known) {
            return page(
                    known.getStatusCode(),
                    known.getStatusCode().value() == 404 ? "missing" : "refused",
                    Map.of("thing", "page"));
        }
        return logged(HttpStatus.INTERNAL_SERVER_ERROR, "failed", failure, request);
    }

    private static ModelAndView logged(HttpStatus status, String view, Exception failure, HttpServletRequest request) {
        String reference = Uuids.next().toString().substring(24);
        LOG.error("Failure {} at {} {}", reference, request.getMethod(), request.getServletPath(), failure);
        return page(
                status,
                view,
                Map.of("reference", reference, "sentence", "What you entered breaks a rule of the register."));
    }

    private static ModelAndView page(HttpStatusCode status, String view, Map<String, ?> model) {
        ModelAndView page =
                wantsJson() ? new ModelAndView(problem(status, model)) : new ModelAndView("error/" + view, model);
        page.setStatus(status);
        if (!wantsJson()
                && RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes) {
            page.addObject("back", CameFrom.page(attributes.getRequest()));
        }
        return page;
    }

    /** The same failure for a script, as RFC 9457 has it. */
    private static View problem(HttpStatusCode status, Map<String, ?> model) {
        Map<String, Object> problem = new LinkedHashMap<>();
        problem.put("status", status.value());
        HttpStatus known = HttpStatus.resolve(status.value());
        problem.put("title", known == null ? "Refused" : known.getReasonPhrase());
        model.forEach((name, value) -> problem.put(name.equals("sentence") ? "detail" : name, value));
        JacksonJsonView view = new JacksonJsonView();
        view.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        view.setAttributesMap(problem);
        view.setModelKeys(problem.keySet());
        return view;
    }

    private static boolean wantsJson() {
        if (!(RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes)) {
            return false;
        }
        String accept = attributes.getRequest().getHeader(HttpHeaders.ACCEPT);
        return accept != null && accept.contains("json") && !accept.contains("text/html");
    }
}
