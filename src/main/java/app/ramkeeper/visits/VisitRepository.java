package app.ramkeeper.visits;

import jakarta.persistence.LockModeType;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface VisitRepository extends Repository<Visit, UUID> {

    Optional<Visit> findById(UUID id);

    Visit saveAndFlush(Visit visit);

    void flush();

    /** The visit with its row held until the transaction ends: reports on one visit come one after the other. */
    @Lock(LockModeType.PESSIMISTIC_WRITE)
    @Query("select v from Visit v where v.id = :id")
    Optional<Visit> hold(UUID id);
}
