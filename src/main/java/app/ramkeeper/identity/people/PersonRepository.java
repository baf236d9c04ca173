package app.ramkeeper.identity.people;

import java.util.UUID;
import org.springframework.data.repository.CrudRepository;

interface PersonRepository extends CrudRepository<Person, UUID> {}
