package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.security.authorization.AuthorizationEventPublisher;
import org.springframework.security.authorization.AuthorizationResult;
import org.springframework.security.authorization.method.PreAuthorizeAuthorizationManager;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.util.SimpleMethodInvocation;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Denies by default: a controller method of ours that names no role is closed to everybody. The rule is asked before
 * anything of the request is read, so that a person without the role gets the same answer to good and bad input.
 */
@Configuration
class RuleRequired implements WebMvcConfigurer, HandlerInterceptor {

    private final PreAuthorizeAuthorizationManager rules = new PreAuthorizeAuthorizationManager();
    private final AuthorizationEventPublisher events;

    RuleRequired(AuthorizationEventPublisher events) {
        this.events = events;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this).order(Integer.MIN_VALUE);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod method
                && method.getBeanType().getName().startsWith("app.ramkeeper.")) {
            if (!hasRule(method)) {
                throw new AccessDeniedException("No role is named for " + method.getShortLogMessage());
            }
            check(method);
        }
        return true;
    }

    private void check(HandlerMethod method) {
        Supplier<@Nullable Authentication> who =
                () -> SecurityContextHolder.getContext().getAuthentication();
        var call = new SimpleMethodInvocation(method.getBean(), method.getMethod());
        AuthorizationResult result = rules.authorize(who, call);
        if (result != null && !result.isGranted()) {
            events.publishAuthorizationEvent(who, call, result);
            throw new AccessDeniedException("The rule of " + method.getShortLogMessage() + " says no");
        }
    }

    static boolean hasRule(HandlerMethod method) {
        return AnnotatedElementUtils.hasAnnotation(method.getMethod(), PreAuthorize.class)
                || AnnotatedElementUtils.hasAnnotation(method.getBeanType(), PreAuthorize.class);
    }
}
