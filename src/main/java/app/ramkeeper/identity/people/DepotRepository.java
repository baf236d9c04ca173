package app.ramkeeper.identity.people;

import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface DepotRepository extends CrudRepository<Depot, UUID> {}
