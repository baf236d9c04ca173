package app.ramkeeper.rounds.travel;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.rounds.RoundsSettings;
import app.ramkeeper.rounds.travel.LegStore.Known;
import app.ramkeeper.rounds.travel.LegStore.Pair;
import app.ramkeeper.rounds.travel.LegStore.Spot;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;

/** The company's travel times: from the table service where one is set up and has answered, else estimated. */
@Service
public class Travels {

    private static final Logger LOG = LoggerFactory.getLogger(Travels.class);

    private final LegStore store;
    private final RoundsSettings settings;
    private final Clock clock;
    private final @Nullable TableService service;

    Travels(LegStore store, RoundsSettings settings, Clock clock) {
        this.store = store;
        this.settings = settings;
        this.clock = clock;
        this.service = settings.travelService() == null ? null : new TableService(settings.travelService(), settings);
    }

    /** Legs as they are known now; asks nobody. */
    public Legs known(Collection<Position> places) {
        Estimate estimate = new Estimate(settings.roadFactor(), store.areas());
        if (service == null) {
            return estimate;
        }
        Map<Pair, Leg> known = store.among(places);
        return (from, to) -> {
            Leg leg = known.get(new Pair(Spot.of(from), Spot.of(to)));
            return leg == null ? estimate.between(from, to) : leg;
        };
    }

    /**
     * Asks the table service for what is not known yet. Never fails: what stays unknown is estimated.
     *
     * @return what the plan should say about its travel times
     */
    public String ask(Collection<Position> places) {
        if (service == null) {
            return "Travel times are estimated: distance as the crow flies times %.2f."
                    .formatted(settings.roadFactor());
        }
        Map<Spot, Position> spots = new LinkedHashMap<>();
        places.forEach(place -> spots.putIfAbsent(Spot.of(place), place));
        if (spots.size() > settings.travelPlaces()) {
            return "%,d places are too many for the travel service (at most %,d): what it has not been asked before is estimated."
                    .formatted(spots.size(), settings.travelPlaces());
        }
        try {
            askMissing(service, new ArrayList<>(spots.values()), store.among(places));
            return "Travel times come from the travel service.";
        } catch (TableService.Failed failure) {
            LOG.warn("The travel service failed: {}", failure.getMessage(), failure);
            return "The travel service failed (%s): the times it has not given before are estimated."
                    .formatted(failure.getMessage());
        }
    }

    private void askMissing(TableService asked, List<Position> places, Map<Pair, Leg> known)
            throws TableService.Failed {
        int block = Math.max(1, settings.travelBlock());
        for (int i = 0; i < places.size(); i += block) {
            List<Position> from = places.subList(i, Math.min(i + block, places.size()));
            for (int k = 0; k < places.size(); k += block) {
                List<Position> to = places.subList(k, Math.min(k + block, places.size()));
                if (!allKnown(from, to, known)) {
                    store.keep(answered(from, to, asked.legs(from, to)), clock.instant());
                }
            }
        }
    }

    private static boolean allKnown(List<Position> from, List<Position> to, Map<Pair, Leg> known) {
        return from.stream()
                .allMatch(a ->
                        to.stream().allMatch(b -> a.equals(b) || known.containsKey(new Pair(Spot.of(a), Spot.of(b)))));
    }

    private static List<Known> answered(List<Position> from, List<Position> to, @Nullable Leg[][] legs) {
        List<Known> answered = new ArrayList<>();
        for (int i = 0; i < from.size(); i++) {
            for (int k = 0; k < to.size(); k++) {
                Leg leg = legs[i][k];
                if (leg != null) {
                    answered.add(new Known(new Pair(Spot.of(from.get(i)), Spot.of(to.get(k))), leg));
                }
            }
        }
        return answered;
    }
}
