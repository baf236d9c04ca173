package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.IdentitySettings;
import java.security.SecureRandom;
import java.util.Base64;
import javax.sql.DataSource;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.jdbc.datasource.DelegatingDataSource;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.session.SessionIdGenerator;
import org.springframework.session.jdbc.PostgreSqlJdbcIndexedSessionRepositoryCustomizer;
import org.springframework.session.jdbc.config.annotation.SpringSessionDataSource;
import org.springframework.session.web.http.CookieSerializer;
import org.springframework.session.web.http.DefaultCookieSerializer;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionOperations;
import org.springframework.transaction.support.TransactionTemplate;

/** Web sessions stand in Postgres, so any node knows them. */
@Configuration
class Sessions {

    private static final SecureRandom RANDOM = new SecureRandom();

    /** 256 random bits; the library's own ids are UUIDs with 122. */
    @Bean
    SessionIdGenerator sessionIds() {
        return () -> {
            byte[] id = new byte[32];
            RANDOM.nextBytes(id);
            return Base64.getUrlEncoder().withoutPadding().encodeToString(id);
        };
    }

    /**
     * The same pool under another name. A transaction binds its connection by the data source: under the same name a session that is
     * saved during another transaction would take that one's connection, and commit it half done.
     */
    @Bean(defaultCandidate = false)
    @SpringSessionDataSource
    DataSource sessionDataSource(DataSource dataSource) {
        return new DelegatingDataSource(dataSource);
    }

    /**
     * Sessions are read and written in short transactions of their own. They do not name an actor: naming one asks for
     * the session.
     */
    @Bean
    TransactionOperations springSessionTransactionOperations(@SpringSessionDataSource DataSource sessionDataSource) {
        TransactionTemplate template = new TransactionTemplate(new JdbcTransactionManager(sessionDataSource));
        template.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
        return template;
    }

    /** Two requests at once may both bring the same new attribute into a session; the later one wins, neither fails. */
    @Bean
    PostgreSqlJdbcIndexedSessionRepositoryCustomizer sessionStatements() {
        return new PostgreSqlJdbcIndexedSessionRepositoryCustomizer();
    }

    /** The {@code __Host-} prefix binds the cookie to this host and to TLS; plain http on localhost cannot have it. */
    @Bean
    CookieSerializer sessionCookie(IdentitySettings settings) {
        DefaultCookieSerializer cookie = new DefaultCookieSerializer();
        cookie.setCookieName(settings.tls() ? "__Host-ramkeeper" : "ramkeeper");
        cookie.setUseSecureCookie(settings.tls());
        cookie.setUseHttpOnlyCookie(true);
        cookie.setSameSite("Lax");
        cookie.setCookiePath("/");
        cookie.setUseBase64Encoding(false);
        return cookie;
    }
}
