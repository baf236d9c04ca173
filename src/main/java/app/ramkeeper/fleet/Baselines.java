package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForAll;
import app.ramkeeper.shared.Missing;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Puts what a commissioning found into its place: the baseline of the configuration of its day if that has none, else a
 * configuration of its own from that day on. An old baseline stays in the history, and nothing newer is written over.
 */
@Service
@ForAll
@Transactional
public class Baselines {

    static final String REASON = "Commissioned anew";

    private final Fleet fleet;
    private final InstallWorks works;
    private final ConfigurationRepository configurations;
    private final ApplicationEventPublisher events;

    Baselines(
            Fleet fleet, InstallWorks works, ConfigurationRepository configurations, ApplicationEventPublisher events) {
        this.fleet = fleet;
        this.works = works;
        this.configurations = configurations;
        this.events = events;
    }

    /**
     * What was found on a day.
     *
     * @param baseline absent if nothing comparable was read
     * @param setting the valve setting it was left at; absent if nobody wrote it down
     * @param corrects the report whose baseline this one replaces where it stands
     */
    public record Found(
            LocalDate on,
            @Nullable BaselineDetails baseline,
            @Nullable String setting,
            @Nullable UUID corrects) {}

    /** Keeps it; what is older than the baseline in its place changes nothing. */
    public void keep(InstallId install, Found found) {
        if (found.baseline() != null || found.setting() != null) {
            place(install, found).ifPresent(then -> keep(then, found));
        }
    }

    /** The configuration of the report that is corrected, else the one of the day. */
    private Optional<ConfigurationCard> place(InstallId install, Found found) {
        List<ConfigurationCard> all = fleet.configurations(install);
        return all.stream()
                .filter(card -> corrected(card, found))
                .findFirst()
                .or(() ->
                        all.stream().filter(card -> card.inForceOn(found.on())).findFirst());
    }

    private static boolean corrected(ConfigurationCard card, Found found) {
        BaselineDetails known = card.baseline();
        return known != null && found.corrects() != null && found.corrects().equals(known.report());
    }

    private void keep(ConfigurationCard then, Found found) {
        BaselineDetails known = then.baseline();
        if (known == null || corrected(then, found)) {
            write(then.id(), found);
        } else if (!known.takenOn().isAfter(found.on()) && changes(then, found)) {
            boolean begunEarlier = known.takenOn().isBefore(found.on())
                    && (then.from() == null || then.from().isBefore(found.on()));
            // Of two commissionings of one day the later word holds.
            write(begunEarlier ? follow(then, found.on()) : then.id(), found);
        }
    }

    private static boolean changes(ConfigurationCard then, Found found) {
        return found.baseline() != null || !Objects.equals(then.details().valveSetting(), found.setting());
    }

    private void write(ConfigurationId id, Found found) {
        if (found.setting() != null) {
            works.keepValveSetting(id, found.setting());
        }
        if (found.baseline() != null) {
            works.keepBaseline(id, found.baseline());
        }
    }

    /** A configuration laid out alike, from that day until the next one there is. */
    private ConfigurationId follow(ConfigurationCard before, LocalDate from) {
        Configuration closed = configurations
                .findById(before.id().value())
                .orElseThrow(() -> new Missing("configuration", before.id()));
        closed.close(from);
        configurations.flush();
        ConfigurationId next = ConfigurationId.next();
        Configuration opened =
                new Configuration(next.value(), before.install().value(), from, REASON, before.details());
        opened.untilDate = before.until();
        configurations.saveAndFlush(opened);
        events.publishEvent(new ConfigurationChanged(before.install(), next, from));
        return next;
    }
}
