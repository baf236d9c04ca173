package app.ramkeeper.visits.calls;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.SiteCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.OpenFollowUp;
import app.ramkeeper.visits.PlannedVisit;
import app.ramkeeper.visits.SiteNow;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitInWords;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;

/** What stands beside the form while somebody is on the phone: the site's last visits, promises, plans and calls. */
@Service
@ForOffice
class CallCompanion {

    private static final int LAST_VISITS = 3;

    private final Fleet fleet;
    private final VisitHistory history;
    private final Calls calls;

    CallCompanion(Fleet fleet, VisitHistory history, Calls calls) {
        this.fleet = fleet;
        this.history = history;
        this.calls = calls;
    }

    /** The story of a site in short. */
    public record Beside(
            SiteCard site,
            List<InstallCard> installs,
            List<VisitInWords> lastVisits,
            List<OpenFollowUp> promises,
            List<PlannedVisit> planned,
            List<CallLine> openCalls) {}

    /** @throws Missing if there is no such site */
    Beside of(SiteId id) {
        SiteCard site = fleet.site(id);
        SiteNow now = history.now(id);
        return new Beside(
                site,
                fleet.installsOf(site.id()),
                history.lastVisits(site.id(), LAST_VISITS),
                now.followUps(),
                now.planned(),
                calls.openAt(site.id().value()));
    }

    /** The same, or nothing where the form names a site that is not there. */
    @Nullable
    Beside ofKnown(SiteId id) {
        try {
            return of(id);
        } catch (Missing gone) {
            return null;
        }
    }
}
