package app.ramkeeper;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.trial.DatabaseRoles;
import java.io.IOException;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Clients that send a byte now and then. */
class SlowClientsDrillTests {

    private static final int HEADERS = 500;
    private static final int BODIES = 200;
    private static final Duration BETWEEN_BYTES = Duration.ofSeconds(5);

    @Test
    @DisplayName("FLT-19 with 500 slow headers and 200 slow bodies a page comes within 2 s; who falls silent is closed")
    void flt19SlowClients() throws Exception {
        try (InstalledApp installed = new InstalledApp()) {
            PackagedApp node = installed.node(DatabaseRoles.DATABASE).awaitUp();
            for (int i = 0; i < 5; i++) {
                node.get("/sign-in");
            }
            List<Socket> slow = new ArrayList<>();
            open(slow, node, HEADERS, "GET /sign-in HTTP/1.1\r\nHost: localhost\r\nX-Slow: a");
            open(
                    slow,
                    node,
                    BODIES,
                    "POST /sign-in HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                            + "Content-Length: 100000\r\n\r\na");
            try {
                for (int round = 0; round < 4; round++) {
                    for (int i = 0; i < 5; i++) {
                        long from = System.nanoTime();
                        assertThat(node.get("/sign-in").statusCode()).isEqualTo(200);
                        assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(Duration.ofSeconds(2));
                    }
                    Thread.sleep(BETWEEN_BYTES.toMillis());
                    slow.forEach(SlowClientsDrillTests::oneByte);
                }
                // server.tomcat.connection-timeout and some
                Thread.sleep(20_000);
                assertThat(slow).allMatch(SlowClientsDrillTests::closed);
            } finally {
                for (Socket each : slow) {
                    each.close();
                }
            }
        }
    }

    private static void open(List<Socket> slow, PackagedApp node, int many, String begin) throws IOException {
        for (int i = 0; i < many; i++) {
            Socket socket = new Socket("127.0.0.1", node.port());
            socket.getOutputStream().write(begin.getBytes(StandardCharsets.US_ASCII));
            slow.add(socket);
        }
    }

    private static void oneByte(Socket socket) {
        try {
            socket.getOutputStream().write('a');
        } catch (IOException closed) {
            assertThat(closed).isNotInstanceOf(SocketTimeoutException.class);
        }
    }

    private static boolean closed(Socket socket) {
        try {
            socket.setSoTimeout(5000);
            return socket.getInputStream().readAllBytes().length < 10_000;
        } catch (SocketTimeoutException open) {
            return false;
        } catch (IOException reset) {
            return true;
        }
    }
}
