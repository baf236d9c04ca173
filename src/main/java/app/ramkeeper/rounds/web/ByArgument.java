package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.shared.Missing;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.security.core.Authentication;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Reads whose step on which week it is: the Monday in the address, the version that the page showed, who is signed in. */
@Component
class ByArgument implements HandlerMethodArgumentResolver, WebMvcConfigurer {

    private final Mondays mondays;

    ByArgument(Mondays mondays) {
        this.mondays = mondays;
    }

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(this);
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == By.class;
    }

    @Override
    public By resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest request,
            @Nullable WebDataBinderFactory binders)
            throws MissingServletRequestParameterException {
        CurrentUser user =
                (CurrentUser) ((Authentication) Objects.requireNonNull(request.getUserPrincipal())).getPrincipal();
        return new By(
                monday(request), seen(request), Objects.requireNonNull(user).person());
    }

    private LocalDate monday(NativeWebRequest request) {
        Map<?, ?> path = (Map<?, ?>) Objects.requireNonNull(
                request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE, RequestAttributes.SCOPE_REQUEST));
        String text = String.valueOf(path.get("monday"));
        try {
            return mondays.known(LocalDate.parse(text));
        } catch (DateTimeParseException unreadable) {
            throw new Missing("week", text);
        }
    }

    private static int seen(NativeWebRequest request) throws MissingServletRequestParameterException {
        String text = request.getParameter("version");
        try {
            return Integer.parseInt(text == null ? "" : text);
        } catch (NumberFormatException unreadable) {
            throw new MissingServletRequestParameterException("version", "int");
        }
    }
}
