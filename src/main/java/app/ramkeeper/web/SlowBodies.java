package app.ramkeeper.web;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.concurrent.Semaphore;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.apache.coyote.ActionCode;
import org.springframework.boot.tomcat.ConfigurableTomcatWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;

/**
 * Lets requests with a body hold half of the server's 200 threads at most: whoever sends a byte now and then keeps a thread
 * waiting, and pages must still be read meanwhile. One more is answered 503, and phones send again by themselves.
 */
@Component
class SlowBodies implements WebServerFactoryCustomizer<ConfigurableTomcatWebServerFactory> {

    private static final int AT_ONCE = 100;

    @Override
    public void customize(ConfigurableTomcatWebServerFactory server) {
        server.addEngineValves(new Gate());
    }

    private static final class Gate extends ValveBase {

        private final Semaphore room = new Semaphore(AT_ONCE);

        Gate() {
            super(true);
        }

        @Override
        public void invoke(Request request, Response response) throws IOException, ServletException {
            if (!hasBody(request)) {
                getNext().invoke(request, response);
            } else if (room.tryAcquire()) {
                try {
                    getNext().invoke(request, response);
                } finally {
                    room.release();
                }
            } else {
                // what is left of the body would be waited for at the end
                request.getCoyoteRequest().action(ActionCode.DISABLE_SWALLOW_INPUT, null);
                response.setHeader(HttpHeaders.RETRY_AFTER, "5");
                response.setStatus(HttpServletResponse.SC_SERVICE_UNAVAILABLE);
            }
        }

        /** By the headers as they came: their meaning, such as of two lengths, is the server's to refuse. */
        private static boolean hasBody(Request request) {
            String length = request.getHeader(HttpHeaders.CONTENT_LENGTH);
            return (length != null && !length.equals("0")) || request.getHeader(HttpHeaders.TRANSFER_ENCODING) != null;
        }
    }
}
