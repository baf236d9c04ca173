package app.ramkeeper.catalogue;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface TaskKindRepository extends JpaRepository<TaskKind, UUID> {

    boolean existsByCode(String code);

    @Query("select k from TaskKind k order by case when k.withdrawnOn is null then 0 else 1 end, k.name")
    List<TaskKind> listed();

    @Query(
            value = "select count(*) > 0 from task_kinds where folded(name) = folded(:name) and id <> :id",
            nativeQuery = true)
    boolean nameTaken(String name, UUID id);
}
