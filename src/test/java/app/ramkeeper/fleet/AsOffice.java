package app.ramkeeper.fleet;

import java.util.function.Supplier;
import org.springframework.security.authentication.TestingAuthenticationToken;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;

/** Runs what a test prepares as somebody of the office, whoever the test itself is signed in as. */
final class AsOffice {

    private AsOffice() {}

    static <T> T call(Supplier<T> work) {
        SecurityContext before = SecurityContextHolder.getContext();
        SecurityContext office = SecurityContextHolder.createEmptyContext();
        office.setAuthentication(new TestingAuthenticationToken("mother", "", "ROLE_OFFICE"));
        SecurityContextHolder.setContext(office);
        try {
            return work.get();
        } finally {
            SecurityContextHolder.setContext(before);
        }
    }

    static void run(Runnable work) {
        call(() -> {
            work.run();
            return true;
        });
    }
}
