package app.ramkeeper.identity.people;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.CrudRepository;

interface AccountRepository extends CrudRepository<Account, UUID> {

    Optional<Account> findByPersonId(UUID person);

    @Query(value = "select exists (select 1 from accounts where folded(login) = folded(:login))", nativeQuery = true)
    boolean isTaken(String login);
}
