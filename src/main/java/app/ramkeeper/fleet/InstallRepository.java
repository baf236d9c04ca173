package app.ramkeeper.fleet;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface InstallRepository extends JpaRepository<Install, UUID> {}
