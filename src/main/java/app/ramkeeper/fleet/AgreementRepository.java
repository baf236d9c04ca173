package app.ramkeeper.fleet;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface AgreementRepository extends JpaRepository<Agreement, UUID> {}
