package app.ramkeeper.fleet;

import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface ConfigurationRepository extends JpaRepository<Configuration, UUID> {

    Optional<Configuration> findByInstallIdAndUntilDateIsNull(UUID installId);
}
