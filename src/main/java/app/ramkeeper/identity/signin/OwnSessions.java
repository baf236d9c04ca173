package app.ramkeeper.identity.signin;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.Authentication;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The sessions of an account on all nodes: listed, ended, and never more than ten. */
@Component
public class OwnSessions {

    /** One more sign-in ends the session that was idle longest. */
    public static final int MOST = 10;

    static final String SIGNED_IN_AT = "signedInAt";
    private static final String DEVICE = "device";

    /** One session as its owner sees it; the handle is not the session's id. */
    public record Row(String handle, String device, Instant begun, Instant lastUsed, boolean here) {}

    private final FindByIndexNameSessionRepository<? extends Session> repository;
    private final JdbcClient jdbc;
    private final Clock clock;

    OwnSessions(FindByIndexNameSessionRepository<? extends Session> repository, JdbcClient jdbc, Clock clock) {
        this.repository = repository;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Notes when and from what a sign-in happened. */
    void begun(HttpServletRequest request, Authentication who) {
        var session = request.getSession();
        session.setAttribute(SIGNED_IN_AT, clock.millis());
        session.setAttribute(DEVICE, Device.describe(request.getHeader(HttpHeaders.USER_AGENT)));
        if (SignedIn.isComplete(who)) {
            endSurplus(who.getName(), session.getId());
        }
    }

    /** Lists the sessions of a sign-in name, the last used first. */
    public List<Row> of(String login, String hereId) {
        return found(login).values().stream()
                .map(session -> row(session, hereId))
                .sorted(Comparator.comparing(Row::lastUsed).reversed())
                .toList();
    }

    /** Ends one of the account's sessions. */
    public boolean end(String login, String handle) {
        var mine = found(login).values().stream()
                .filter(session -> Tokens.handle(session.getId()).equals(handle))
                .findFirst();
        mine.ifPresent(session -> repository.deleteById(session.getId()));
        return mine.isPresent();
    }

    /**
     * Ends all sessions of an account on all nodes, but for one if it is named, in the caller's transaction: what takes
     * rights away and the end of the sessions happen together or not at all.
     */
    @Transactional
    public void endAll(String login, @Nullable String exceptId) {
        jdbc.sql("delete from spring_session where principal_name = :login and session_id is distinct from :except")
                .param("login", login)
                .param("except", exceptId)
                .update();
    }

    private void endSurplus(String login, String hereId) {
        found(login).values().stream()
                .filter(session -> !session.getId().equals(hereId))
                .sorted(Comparator.<Session, Instant>comparing(Session::getLastAccessedTime)
                        .reversed())
                .skip(MOST - 1L)
                .forEach(session -> repository.deleteById(session.getId()));
    }

    private Map<String, ? extends Session> found(String login) {
        return repository.findByPrincipalName(login);
    }

    private static Row row(Session session, String hereId) {
        String device = session.getAttribute(DEVICE);
        Long begun = session.getAttribute(SIGNED_IN_AT);
        return new Row(
                Tokens.handle(session.getId()),
                device == null ? "unknown device" : device,
                begun == null ? session.getCreationTime() : Instant.ofEpochMilli(begun),
                session.getLastAccessedTime(),
                session.getId().equals(hereId));
    }
}
