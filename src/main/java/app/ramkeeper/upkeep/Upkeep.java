package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.PartToBring;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What other features may ask about service tasks. */
@Service
@ForField
@Transactional(readOnly = true)
public class Upkeep {

    private final DueTaskQuery query;
    private final CountsQuery counts;
    private final Catalogue catalogue;

    Upkeep(DueTaskQuery query, CountsQuery counts, Catalogue catalogue) {
        this.query = query;
        this.counts = counts;
        this.catalogue = catalogue;
    }

    /** All tasks at a site with their state today, those due first. */
    public List<DueTask> tasksAt(SiteId site) {
        return query.ofSite(site.value());
    }

    /** All tasks of an install with their state today, those due first. */
    public List<DueTask> tasksFor(InstallId install) {
        return query.ofInstall(install.value());
    }

    /** The tasks with these ids. */
    public List<DueTask> tasks(Collection<UUID> ids) {
        return query.byId(ids);
    }

    /** What to bring for these tasks: each part that fits the pump's model, or its kind where no part is known. */
    public List<PartToBring> partsFor(List<DueTask> tasks) {
        return catalogue.partsToBring(
                tasks.stream().map(DueTask::kindId).collect(Collectors.toSet()),
                tasks.stream().map(DueTask::modelId).filter(Objects::nonNull).collect(Collectors.toSet()));
    }

    /** What is overdue, by kind and by whose it is; watched kinds first. */
    public List<OverdueCount> overdueByKind() {
        return counts.overdueByKind();
    }

    /** What falls due in the seven days from today, and what is past its due date, ours and awake. */
    public DueCounts dueThisWeek() {
        return counts.dueThisWeek();
    }
}
