package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.visits.PageTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.session.Session;
import org.springframework.session.SessionRepository;

@PageTest
class SessionsTests {

    @Autowired
    SessionRepository<? extends Session> sessions;

    @Autowired
    JdbcClient jdbc;

    @Test
    void savingOneLeavesTheTransactionAroundItOpen() {
        String before = transaction();
        save(sessions);
        assertThat(transaction()).isEqualTo(before);
    }

    private static <S extends Session> void save(SessionRepository<S> sessions) {
        S session = sessions.createSession();
        session.setAttribute("what", "anything");
        sessions.save(session);
        assertThat(sessions.findById(session.getId())).isNotNull();
        sessions.deleteById(session.getId());
    }

    private String transaction() {
        return jdbc.sql("select pg_current_xact_id()::text").query(String.class).single();
    }
}
