package app.ramkeeper.identity.people;

import app.ramkeeper.identity.DepotId;
import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.shared.Missing;
import java.util.UUID;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The administrator's work on depots. */
@Service
@Transactional
@ForAdministrator
class DepotAdmin {

    private final DepotRepository depots;

    DepotAdmin(DepotRepository depots) {
        this.depots = depots;
    }

    @Transactional(readOnly = true)
    DepotForm read(UUID id) {
        return find(id).form();
    }

    void add(DepotForm form) {
        depots.save(new Depot(DepotId.next().value(), form));
    }

    void change(UUID id, DepotForm form) {
        Depot depot = find(id);
        if (form.version() == null || depot.version() != form.version()) {
            throw new OptimisticLockingFailureException("The depot was changed meanwhile");
        }
        depot.change(form);
        depots.save(depot);
    }

    private Depot find(UUID id) {
        return depots.findById(id).orElseThrow(() -> new Missing("depot", id));
    }
}
