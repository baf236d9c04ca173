package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.web.Slice;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What pages show of visits, past and planned. Only reports in force count, unless a report is asked for by its id. */
@Service
@ForField
@Transactional(readOnly = true)
public class VisitHistory {

    private final ReportQueries reports;
    private final StoryQueries stories;
    private final PlanQueries plans;
    private final ReportFacts facts;
    private final SiteNowQuery now;

    VisitHistory(ReportQueries reports, StoryQueries stories, PlanQueries plans, ReportFacts facts, SiteNowQuery now) {
        this.reports = reports;
        this.stories = stories;
        this.plans = plans;
        this.facts = facts;
        this.now = now;
    }

    /** A report by its id, in force or not. */
    public Optional<ReportView> report(ReportId id) {
        return reports.byId(id);
    }

    /** The installs that a report speaks of, wherever they stand now. */
    public Set<InstallId> installsIn(ReportId id) {
        return facts.installsIn(id);
    }

    /** A site's last visits in words, newest first; one statement. */
    public List<VisitInWords> lastVisits(SiteId site, int most) {
        return stories.lastVisits(site, most);
    }

    /** An install's reports, newest first. */
    public Slice<ReportView> ofInstall(InstallId install, @Nullable String after) {
        return reports.ofInstall(install, after);
    }

    /** A site's visits in words, newest first, a page at a time; one statement. */
    public Slice<VisitInWords> ofSite(SiteId site, @Nullable String after) {
        return stories.ofSite(site, after);
    }

    /** All readings of an install, oldest first, those that are not comparable too. */
    public List<ReadingPoint> readings(InstallId install) {
        return stories.readings(install);
    }

    /** How a site stands after its visits so far; one statement. */
    public SiteNow now(SiteId site) {
        return now.of(site);
    }

    /** A person's planned visits of a day by time. */
    public List<PlannedVisit> plannedFor(PersonId person, LocalDate day) {
        return plans.plannedFor(person, day);
    }

    /** Who is in the field and has not said that they are back; the latest first. */
    public List<PersonOut> notBack() {
        return plans.notBack();
    }

    /** How many calls are open. */
    public int openCalls() {
        return plans.openCalls();
    }
}
