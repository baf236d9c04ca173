package app.ramkeeper.quotes.job;

import app.ramkeeper.fleet.ConsentDetails;
import app.ramkeeper.fleet.ConsentKind;
import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.NewParty;
import app.ramkeeper.fleet.Papers;
import app.ramkeeper.fleet.SiteDetails;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.fleet.SiteRegister;
import app.ramkeeper.fleet.Versioned;
import app.ramkeeper.quotes.offer.QuoteCard;
import app.ramkeeper.quotes.survey.SurveyedPlace;
import app.ramkeeper.quotes.survey.SurveyedPlace.Right;
import app.ramkeeper.shared.Uuids;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Puts the place of an accepted quote on the register: the site, what the survey tells of it, and its consents. */
@Component
class SiteHandOver {

    private final SiteRegister sites;
    private final Papers papers;
    private final JdbcClient jdbc;
    private final Clock clock;

    SiteHandOver(SiteRegister sites, Papers papers, JdbcClient jdbc, Clock clock) {
        this.sites = sites;
        this.papers = papers;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** The site; of a known one only what was blank is filled in, for the register may know better. */
    SiteId site(QuoteCard card, CustomerId customer, @Nullable SurveyedPlace place) {
        if (card.siteId() == null) {
            return sites.register(
                    filled(SiteDetails.named(card.place(), null), place),
                    List.of(NewParty.of(SitePart.OWNER, customer), NewParty.of(SitePart.PAYER, customer)));
        }
        SiteId site = kept(card.siteId());
        Versioned<SiteDetails> known = sites.read(site);
        SiteDetails filled = filled(known.details(), place);
        if (!filled.equals(known.details())) {
            sites.edit(site, known.version(), filled);
        }
        return site;
    }

    /** The site itself, or the one it was merged into since the quote was made. */
    private SiteId kept(UUID site) {
        return new SiteId(jdbc.sql("""
                        with recursive chain as (select id, merged_into from sites where id = :id
                          union all select s.id, s.merged_into from sites s join chain c on s.id = c.merged_into)
                        select id from chain where merged_into is null""").param("id", site).query(UUID.class).single());
    }

    private SiteDetails filled(SiteDetails known, @Nullable SurveyedPlace place) {
        if (place == null) {
            return known;
        }
        return new SiteDetails(
                known.reference(),
                known.name(),
                known.locality(),
                known.catchment(),
                known.depot(),
                or(known.position(), place.position()),
                or(known.altitudeM(), place.altitudeM()),
                or(known.wayIn(), place.access()),
                known.gate(),
                or(known.walkMinutes(), place.walkMinutes()),
                known.sourceKind(),
                or(known.waterClass(), waterClass(place.waterClass())),
                known.drinkingWater() || place.drinkingWater(),
                known.privateNotes());
    }

    private static <T> @Nullable T or(@Nullable T known, @Nullable T found) {
        return known == null ? found : known;
    }

    private @Nullable String waterClass(@Nullable String code) {
        return code == null
                ? null
                : jdbc.sql("select code from water_classes where code = ?")
                        .param(code)
                        .query(String.class)
                        .optional()
                        .orElse(null);
    }

    /** Each right the works need, with its day: the last one if it is held, else the one by which it must be settled. */
    void consents(SiteId site, SurveyedPlace place) {
        place.rights().stream()
                .filter(right -> !right.held() || !noted(site, right.kind()))
                .forEach(right -> keep(site, right, right.kind() == ConsentKind.TAKE ? place.residualLMin() : null));
        boolean onTake = place.rights().stream().anyMatch(right -> right.kind() == ConsentKind.TAKE);
        if (place.residualLMin() == null || !onTake && place.residualLMin() > 0) {
            residual(site, place.residualLMin());
        }
    }

    private boolean noted(SiteId site, ConsentKind kind) {
        return jdbc.sql("select exists (select from consents where site_id = :site and kind = :kind"
                        + " and (expires_on is null or expires_on >= :today))")
                .param("site", site.value())
                .param("kind", kind.name())
                .param("today", LocalDate.now(clock))
                .query(Boolean.class)
                .single();
    }

    private void keep(SiteId site, Right right, @Nullable Double residual) {
        LocalDate settleBy = right.on() == null ? LocalDate.now(clock) : right.on();
        papers.keepConsent(
                Uuids.next(),
                site,
                new ConsentDetails(
                        right.kind(),
                        null,
                        null,
                        residual,
                        null,
                        right.held() ? null : settleBy,
                        right.held() ? right.on() : null,
                        right.held()
                                ? "Held, as the survey says. Note its number and its limits here."
                                : "To be settled before work starts."));
    }

    private void residual(SiteId site, @Nullable Double litres) {
        papers.keepConsent(
                Uuids.next(),
                site,
                new ConsentDetails(
                        ConsentKind.OTHER,
                        null,
                        null,
                        litres,
                        null,
                        litres == null ? LocalDate.now(clock) : null,
                        null,
                        litres == null
                                ? "To be settled before work starts: how much water must stay in the stream."
                                : "What must stay in the stream, as the survey says."));
    }
}
