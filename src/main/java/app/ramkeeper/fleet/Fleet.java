package app.ramkeeper.fleet;

import app.ramkeeper.web.Choice;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What other features may ask the register. An id of a merged duplicate answers for the one that was kept. */
public interface Fleet {

    /**
     * A site as a technician may see it.
     *
     * @throws app.ramkeeper.shared.Missing if there is none
     */
    SiteCard site(SiteId id);

    /**
     * An install as it stands today.
     *
     * @throws app.ramkeeper.shared.Missing if there is none
     */
    InstallCard install(InstallId id);

    /** All installs of a site, those at work first. */
    List<InstallCard> installsOf(SiteId id);

    /**
     * A pump with the place where it is today.
     *
     * @throws app.ramkeeper.shared.Missing if there is none
     */
    PumpCard pump(PumpId id);

    /** All configurations of an install, newest first, each with its baseline. */
    List<ConfigurationCard> configurations(InstallId id);

    /** The configuration in force on a day, with its baseline. */
    default Optional<ConfigurationCard> configurationOn(InstallId id, LocalDate day) {
        return configurations(id).stream().filter(c -> c.inForceOn(day)).findFirst();
    }

    /** What an install did and does, oldest first; none before it is commissioned. */
    List<RunningPeriod> runningPeriods(InstallId id);

    /** Sites found by a few words or half a name, mistyped or not: best first. */
    List<SiteMatch> search(String words, int limit);

    Optional<CustomerId> customerByReference(String reference);

    Optional<SiteId> siteByReference(String reference);

    Optional<InstallId> installByReference(String reference);

    Optional<PumpId> pumpBySerial(String serial);

    List<Choice> catchments();

    /** Installs at work in a catchment: those a flood there hits. */
    List<InstallId> installsIn(CatchmentId catchment);

    /** Installs at work whose site lies in a box of the map. */
    List<InstallId> installsIn(Position southWest, Position northEast);

    /** The site itself and the duplicates that were merged into it: reports may still name one of those. */
    List<SiteId> withDuplicates(SiteId id);
}
