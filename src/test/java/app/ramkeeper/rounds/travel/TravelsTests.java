package app.ramkeeper.rounds.travel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.RoundsSettings;
import app.ramkeeper.visits.PageTest;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** Travel times against a stub that answers in the shape of the table service of OSRM's HTTP API, version 1. */
@PageTest
class TravelsTests {

    private static final Position DEPOT = new Position(-45.0312, 168.6626);
    private static final Position BECK = new Position(-44.9450, 168.8320);
    private static final Position ISLAND = new Position(-45.0600, 168.5000);

    /** Seconds and metres; the way back over the pass takes longer, and no road leads to the island. */
    private static final String TABLE = """
            {"code":"Ok","durations":[[0,1260.4,null],[1510.9,0,null],[null,null,0]],"distances":[[0,19873.2,null],[20110.6,0,null],[null,null,0]],
            "sources":[{"hint":"aGludA","distance":4.231,"name":"Mill Road","location":[168.66262,-45.03117]},{"hint":"aGludB","distance":18.7,"name":"","location":[168.8322,-44.9451]},{"hint":"aGludC","distance":911.0,"name":"Ferry","location":[168.51,-45.06]}],
            "destinations":[{"hint":"aGludA","distance":4.231,"name":"Mill Road","location":[168.66262,-45.03117]},{"hint":"aGludB","distance":18.7,"name":"","location":[168.8322,-44.9451]},{"hint":"aGludC","distance":911.0,"name":"Ferry","location":[168.51,-45.06]}]}""";

    @Autowired
    LegStore store;

    @Autowired
    RoundsSettings usual;

    @Autowired
    Clock clock;

    private final List<String> asked = new ArrayList<>();
    private HttpServer server;
    private int status = 200;
    private String answer = TABLE;
    private long delayMillis;

    @BeforeEach
    void start() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            asked.add(exchange.getRequestURI().toString());
            pause();
            byte[] bytes = answer.getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().add("Content-Type", "application/json; charset=UTF-8");
            exchange.sendResponseHeaders(status, bytes.length);
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
        server.start();
    }

    private void pause() {
        try {
            Thread.sleep(delayMillis);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @AfterEach
    void stop() {
        server.stop(0);
    }

    @Test
    void readsBothDirectionsAndRemembersThem() {
        Travels travels = travels(400);

        assertThat(travels.ask(List.of(DEPOT, BECK, ISLAND))).isEqualTo("Travel times come from the travel service.");

        assertThat(asked).hasSize(1);
        assertThat(asked.get(0))
                .startsWith("/table/v1/driving/168.66260,-45.03120;168.83200,-44.94500;168.50000,-45.06000;")
                .contains("annotations=duration,distance");
        Legs legs = travels.known(List.of(DEPOT, BECK, ISLAND));
        assertThat(legs.between(DEPOT, BECK).minutes()).isCloseTo(21.0, within(0.01));
        assertThat(legs.between(DEPOT, BECK).metres()).isCloseTo(19_873.2, within(0.1));
        assertThat(legs.between(BECK, DEPOT).minutes()).isCloseTo(25.18, within(0.01));
        assertThat(legs.between(DEPOT, ISLAND).minutes())
                .as("estimated where there is no road")
                .isCloseTo(estimate(DEPOT, ISLAND), within(1e-6));

        travels.ask(List.of(DEPOT, BECK));
        assertThat(asked).as("known pairs are not asked again").hasSize(1);
    }

    @Test
    void fallsBackToTheEstimateAndSaysSo() {
        for (String broken : List.of(
                "{\"code\":\"NoTable\",\"message\":\"no way\"}", "<html>", "{\"code\":\"Ok\",\"durations\":[[0]]}")) {
            answer = broken;
            assertThat(travels(400).ask(List.of(DEPOT, BECK, ISLAND)))
                    .as(broken)
                    .startsWith("The travel service failed")
                    .contains("estimated");
        }
        answer = TABLE;
        status = 503;
        assertThat(travels(400).ask(List.of(DEPOT, BECK, ISLAND))).startsWith("The travel service failed");
        status = 200;
        delayMillis = 2_000;
        assertThat(travels(400).ask(List.of(DEPOT, BECK, ISLAND))).startsWith("The travel service failed");
        server.stop(0);
        assertThat(travels(400).ask(List.of(DEPOT, BECK, ISLAND))).startsWith("The travel service failed");
        assertThat(travels(400).known(List.of(DEPOT, BECK)).between(DEPOT, BECK).minutes())
                .isCloseTo(estimate(DEPOT, BECK), within(1e-6));
    }

    @Test
    void roadsOfAnAreaCountForThePartOfAWayThatLiesInItBothWays() {
        Position out = new Position(-45, 169.5);
        Position in = new Position(-45, 168.5);
        Estimate plain = new Estimate(1.4, List.of());
        Estimate slow = new Estimate(
                1.4, List.of(new Area(java.util.UUID.randomUUID(), "Gorge", -46, 168, -44, 168.75, 2, 25, 0)));
        double km = out.kilometresTo(in);

        assertThat(slow.between(out, in).metres()).isCloseTo(1000 * km * (0.75 * 1.4 + 0.25 * 2), within(1.0));
        assertThat(slow.between(out, in).minutes())
                .isCloseTo(
                        60 * km * 0.25 * 2 / 25
                                + plain.between(out, new Position(-45, 168.75)).minutes(),
                        within(0.1))
                .isCloseTo(slow.between(in, out).minutes(), within(1e-9));
        assertThat(slow.between(out, new Position(-45, 169)).minutes())
                .isCloseTo(plain.between(out, new Position(-45, 169)).minutes(), within(1e-9));
    }

    @Test
    void asksNothingForTooManyPlaces() {
        assertThat(travels(2).ask(List.of(DEPOT, BECK, ISLAND))).contains("too many");
        assertThat(asked).isEmpty();
    }

    private double estimate(Position from, Position to) {
        return new Estimate(usual.roadFactor(), store.areas()).between(from, to).minutes();
    }

    private Travels travels(int places) {
        RoundsSettings settings = new RoundsSettings(
                URI.create("http://127.0.0.1:" + server.getAddress().getPort()),
                Duration.ofSeconds(1),
                50,
                places,
                usual.roadFactor(),
                1,
                Duration.ofSeconds(1),
                Duration.ofMinutes(30),
                10);
        return new Travels(store, settings, clock);
    }
}
