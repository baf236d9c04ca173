package app.ramkeeper.catalogue;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface PartRepository extends JpaRepository<Part, UUID> {

    @Query("select p from Part p order by case when p.withdrawnOn is null then 0 else 1 end, p.number")
    List<Part> listed();

    @Query(
            value = "select count(*) > 0 from parts where folded(number) = folded(:number) and id <> :id",
            nativeQuery = true)
    boolean numberTaken(String number, UUID id);
}
