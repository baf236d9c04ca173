package app.ramkeeper.rounds;

import java.net.URI;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How rounds are planned, {@code ramkeeper.rounds}.
 *
 * @param travelService base address of a table service with the interface of OSRM; without it travel is estimated
 * @param travelTimeout how long it may take to answer
 * @param travelBlock most places in one question to it
 * @param travelPlaces most places it is asked about at once; with more, what is not known yet is estimated
 * @param roadFactor road distance over the distance as the crow flies, outside areas of their own factor
 * @param iterations steps of a plan from scratch; the number of steps, not the clock, ends it, so it can be repeated
 * @param longest time after which a run ends with the best so far, however slow the machine
 * @param callOutRoom time of each technician's day that the optimiser and the weeks ahead leave free for call-outs, until the week is published
 * @param candidates most visits that one week looks at
 */
@ConfigurationProperties("ramkeeper.rounds")
public record RoundsSettings(
        @Nullable URI travelService,
        @DefaultValue("5s") Duration travelTimeout,
        @DefaultValue("50") int travelBlock,
        @DefaultValue("400") int travelPlaces,
        double roadFactor,
        @DefaultValue("60000") long iterations,
        @DefaultValue("60s") Duration longest,
        @DefaultValue("30m") Duration callOutRoom,
        @DefaultValue("2000") int candidates) {}
