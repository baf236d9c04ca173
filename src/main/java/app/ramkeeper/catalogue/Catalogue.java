package app.ramkeeper.catalogue;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What other features may ask of the catalogue. */
@Service
@Transactional(readOnly = true)
public class Catalogue {

    private final TaskTermsQuery terms;
    private final CatalogueQuery query;

    Catalogue(TaskTermsQuery terms, CatalogueQuery query) {
        this.terms = terms;
        this.query = query;
    }

    /** The terms of every kind of task, withdrawn ones too, in a fixed number of statements. */
    public Map<UUID, TaskTerms> terms() {
        return terms.all();
    }

    /** For each kind, itself and all kinds that do it too when they are done: an overhaul for a rubber. */
    public Map<UUID, Set<UUID>> includers() {
        return terms.includers();
    }

    /** Kinds of task in use, by name. */
    public List<TaskKindCard> taskKinds() {
        return query.taskKinds();
    }

    /** The kind with this code, such as CLEAN_STRAINER. */
    public Optional<TaskKindCard> taskKind(String code) {
        return query.taskKind(code);
    }

    /** Pump models in use, by name. */
    public List<PumpModelCard> pumpModels() {
        return query.pumpModels();
    }

    /** The model of this name, however its capitals and accents are written. */
    public Optional<PumpModelCard> pumpModel(String name) {
        return query.pumpModel(name);
    }

    /** Parts in use, by number. */
    public List<PartCard> parts() {
        return query.parts();
    }

    /** The part with this number, however its capitals are written. */
    public Optional<PartCard> part(String number) {
        return query.part(number);
    }

    /** What to bring for these kinds of task to a pump of a model: each part that fits, with its quantity. */
    public List<PartToBring> partsToBring(Collection<UUID> kinds, Collection<UUID> models) {
        return kinds.isEmpty() ? List.of() : query.partsToBring(kinds, models);
    }
}
