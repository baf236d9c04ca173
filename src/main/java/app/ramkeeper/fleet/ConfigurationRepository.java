package app.ramkeeper.fleet;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface ConfigurationRepository extends JpaRepository<Configuration, UUID> {

    Optional<Configuration> findByInstallIdAndUntilDateIsNull(UUID installId);

    /** The configuration in force on a day. */
    @Query(
            value =
                    "select id from configurations where install_id = ?1 and daterange(from_date, until_date) @> cast(?2 as date)",
            nativeQuery = true)
    Optional<UUID> findOn(UUID installId, LocalDate day);
}
