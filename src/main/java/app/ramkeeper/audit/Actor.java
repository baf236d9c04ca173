package app.ramkeeper.audit;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/**
 * Who acts in a transaction and by which way in.
 *
 * @param name the account's sign-in name, or "system"
 * @param source the method and path of the request, or the job
 */
public record Actor(String name, String source) {

    private static final ThreadLocal<@Nullable Actor> OVERRIDE = new ThreadLocal<>();

    /** Runs work as somebody, from a job: an import runs as the person who started it. */
    public static <T> T as(Actor actor, Supplier<T> work) {
        Actor before = OVERRIDE.get();
        OVERRIDE.set(actor);
        try {
            return work.get();
        } finally {
            OVERRIDE.set(before);
        }
    }

    static Actor current() {
        Actor override = OVERRIDE.get();
        return override != null ? override : new Actor(signedInName(), currentSource());
    }

    private static String signedInName() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        return authentication == null ? "system" : authentication.getName();
    }

    private static String currentSource() {
        if (RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes) {
            return attributes.getRequest().getMethod() + " "
                    + cut(attributes.getRequest().getServletPath());
        }
        return "job";
    }

    private static String cut(String path) {
        return path.length() <= 200 ? path : path.substring(0, 200);
    }
}
