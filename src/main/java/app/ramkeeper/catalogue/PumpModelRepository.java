package app.ramkeeper.catalogue;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface PumpModelRepository extends JpaRepository<PumpModel, UUID> {

    @Query("select m from PumpModel m order by case when m.withdrawnOn is null then 0 else 1 end, m.name")
    List<PumpModel> listed();

    @Query(
            value = "select count(*) > 0 from pump_models where folded(name) = folded(:name) and id <> :id",
            nativeQuery = true)
    boolean nameTaken(String name, UUID id);
}
