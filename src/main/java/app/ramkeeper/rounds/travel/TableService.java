package app.ramkeeper.rounds.travel;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.RoundsSettings;
import java.net.URI;
import java.net.http.HttpClient;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.client.JdkClientHttpRequestFactory;
import org.springframework.web.client.RestClient;
import org.springframework.web.client.RestClientException;
import org.springframework.web.util.UriComponentsBuilder;

/**
 * Asks a table service for travel times, in the interface of OSRM:
 * {@code /table/v1/driving/lon,lat;...?sources=...&destinations=...&annotations=duration,distance}.
 */
final class TableService {

    /** The answer; a pair that no road joins is null. */
    record Table(
            @Nullable String code,
            @Nullable String message,
            @Nullable List<List<@Nullable Double>> durations,
            @Nullable List<List<@Nullable Double>> distances) {}

    /** The service did not answer as it should. */
    static final class Failed extends Exception {
        private static final long serialVersionUID = 1;

        Failed(String why, @Nullable Throwable cause) {
            super(why, cause);
        }
    }

    private final URI base;
    private final RestClient client;

    TableService(URI base, RoundsSettings settings) {
        this.base = base;
        JdkClientHttpRequestFactory http = new JdkClientHttpRequestFactory(HttpClient.newBuilder()
                .connectTimeout(settings.travelTimeout())
                .followRedirects(HttpClient.Redirect.NEVER)
                .build());
        http.setReadTimeout(settings.travelTimeout());
        this.client = RestClient.builder().requestFactory(http).build();
    }

    /** The legs from each source to each destination; null where there is no road. */
    @Nullable
    Leg[][] legs(List<Position> sources, List<Position> destinations) throws Failed {
        Table table = ask(address(sources, destinations));
        if (!"Ok".equals(table.code())) {
            throw new Failed("it said " + table.code() + (table.message() == null ? "" : ": " + table.message()), null);
        }
        @Nullable Leg[][] legs = new @Nullable Leg[sources.size()][destinations.size()];
        for (int i = 0; i < sources.size(); i++) {
            for (int k = 0; k < destinations.size(); k++) {
                Double seconds = cell(table.durations(), i, k);
                Double metres = cell(table.distances(), i, k);
                if (seconds != null && seconds >= 0) {
                    legs[i][k] = new Leg(seconds / 60, metres == null ? 0 : Math.max(0, metres));
                }
            }
        }
        return legs;
    }

    private Table ask(URI address) throws Failed {
        try {
            Table table = client.get().uri(address).retrieve().body(Table.class);
            if (table == null) {
                throw new Failed("it answered nothing", null);
            }
            return table;
        } catch (RestClientException failure) {
            throw new Failed("it could not be reached or its answer not be read", failure);
        }
    }

    private static @Nullable Double cell(@Nullable List<List<@Nullable Double>> rows, int row, int column)
            throws Failed {
        if (rows == null) {
            return null;
        }
        if (rows.size() <= row || rows.get(row).size() <= column) {
            throw new Failed("its table is too small", null);
        }
        return rows.get(row).get(column);
    }

    private URI address(List<Position> sources, List<Position> destinations) {
        String places = java.util.stream.Stream.concat(sources.stream(), destinations.stream())
                .map(p -> String.format(Locale.ROOT, "%.5f,%.5f", p.longitude(), p.latitude()))
                .collect(Collectors.joining(";"));
        return UriComponentsBuilder.fromUri(base)
                .path("/table/v1/driving/" + places)
                .queryParam("sources", numbers(0, sources.size()))
                .queryParam("destinations", numbers(sources.size(), destinations.size()))
                .queryParam("annotations", "duration,distance")
                .encode()
                .build()
                .toUri();
    }

    private static String numbers(int from, int count) {
        return IntStream.range(from, from + count).mapToObj(Integer::toString).collect(Collectors.joining(";"));
    }
}
