package app.ramkeeper.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionSystemException;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Answers 503 where the database went away before a page was asked: sessions are read there too, ahead of the error
 * advice.
 */
@Component
@Order(Integer.MIN_VALUE + 10)
class DatabaseAway extends OncePerRequestFilter {

    private static final Logger LOG = LoggerFactory.getLogger(DatabaseAway.class);

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            chain.doFilter(request, response);
        } catch (ServletException | RuntimeException failure) {
            if (!causes(failure) || response.isCommitted()) {
                throw failure;
            }
            LOG.warn("The database was away at {}: {}", request.getMethod(), failure.toString());
            // a page may have begun: its type would stand in the way of the answer
            response.reset();
            response.setHeader(HttpHeaders.RETRY_AFTER, "5");
            response.sendError(HttpServletResponse.SC_SERVICE_UNAVAILABLE);
        }
    }

    /** True where the database could not be reached, was stopping, had no room, or kept a lock for too long. */
    static boolean causes(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLTransientConnectionException
                    || (cause instanceof SQLException database && isAway(database.getSQLState()))) {
                return true;
            }
            // A cut connection cannot be rolled back either; what happened first stands beside.
            if (cause instanceof TransactionSystemException ended
                    && ended.getApplicationException() != null
                    && causes(ended.getApplicationException())) {
                return true;
            }
        }
        return false;
    }

    // SQLSTATE classes: 08 connection, 53 out of resources, 57 stopped by an operator or a time limit; 55P03 lock.
    private static boolean isAway(@Nullable String state) {
        return state != null
                && (state.startsWith("08")
                        || state.startsWith("53")
                        || state.startsWith("57")
                        || state.equals("55P03"));
    }
}
