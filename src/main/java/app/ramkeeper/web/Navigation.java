package app.ramkeeper.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Set;
import org.springframework.core.env.Environment;
import org.springframework.core.env.Profiles;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** What every page's frame needs: the way to the role's lists, and whether this is the trial run. */
@ControllerAdvice
class Navigation {

    /** One link of the frame. */
    public record Item(String path, String key, boolean here) {}

    private record Entry(String path, String key, Set<String> roles) {}

    private static final List<Entry> ENTRIES = List.of(
            new Entry("/", "nav.home", Set.of("OFFICE", "TECHNICIAN", "MANAGER", "ADMINISTRATOR")),
            new Entry("/field", "nav.field", Set.of("TECHNICIAN")),
            new Entry("/due", "nav.due", Set.of("OFFICE", "MANAGER")),
            new Entry("/overdue", "nav.overdue", Set.of("MANAGER")),
            new Entry("/visits", "nav.visits", Set.of("OFFICE", "MANAGER")),
            new Entry("/rounds", "nav.rounds", Set.of("OFFICE", "MANAGER")),
            new Entry("/calls", "nav.calls", Set.of("OFFICE", "MANAGER")),
            new Entry("/quotes", "nav.quotes", Set.of("OFFICE", "MANAGER")),
            new Entry("/jobs", "nav.jobs", Set.of("OFFICE", "MANAGER")),
            new Entry("/enquiries", "nav.enquiries", Set.of("OFFICE", "TECHNICIAN", "MANAGER")),
            new Entry("/sites", "nav.sites", Set.of("OFFICE", "TECHNICIAN", "MANAGER")),
            new Entry("/customers", "nav.customers", Set.of("OFFICE", "MANAGER")),
            new Entry("/pumps", "nav.pumps", Set.of("OFFICE", "MANAGER")),
            new Entry("/stock", "nav.stock", Set.of("OFFICE", "MANAGER")),
            new Entry("/imports", "nav.imports", Set.of("OFFICE", "ADMINISTRATOR")),
            new Entry("/task-kinds", "nav.taskKinds", Set.of("ADMINISTRATOR")),
            new Entry("/pump-models", "nav.catalogue", Set.of("ADMINISTRATOR", "OFFICE")),
            new Entry("/prices", "nav.prices", Set.of("ADMINISTRATOR", "OFFICE")),
            new Entry("/people", "nav.people", Set.of("ADMINISTRATOR")),
            new Entry("/settings", "nav.settings", Set.of("ADMINISTRATOR")),
            new Entry("/audit", "nav.audit", Set.of("ADMINISTRATOR")));

    private final boolean trial;

    Navigation(Environment environment) {
        this.trial = environment.acceptsProfiles(Profiles.of("trial"));
    }

    @ModelAttribute("trial")
    boolean trial() {
        return trial;
    }

    @ModelAttribute("navigation")
    List<Item> navigation(HttpServletRequest request) {
        Authentication person = SecurityContextHolder.getContext().getAuthentication();
        if (person == null) {
            return List.of();
        }
        Set<String> held = AuthorityUtils.authorityListToSet(person.getAuthorities());
        String path = request.getServletPath();
        return ENTRIES.stream()
                .filter(entry -> entry.roles().stream().anyMatch(role -> held.contains("ROLE_" + role)))
                .map(entry -> new Item(entry.path(), entry.key(), isHere(path, entry.path())))
                .toList();
    }

    private static boolean isHere(String path, String entry) {
        return entry.equals("/") ? path.equals("/") : path.equals(entry) || path.startsWith(entry + "/");
    }
}
