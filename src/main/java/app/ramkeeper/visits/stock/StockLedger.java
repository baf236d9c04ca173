package app.ramkeeper.visits.stock;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.visits.stock.Movements.Movement;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What reports do to stock. A part that was used was used, whatever the count says: where the van's count falls short,
 * a row says by how much it was off. Called by the recorder of reports, inside its transaction.
 */
@Component
public class StockLedger {

    private final JdbcClient jdbc;
    private final Movements movements;

    StockLedger(JdbcClient jdbc, Movements movements) {
        this.jdbc = jdbc;
        this.movements = movements;
    }

    /** A part a report says was used; without batch it is taken from whatever batch is there. */
    public record Used(
            UUID id,
            PartId part,
            BigDecimal quantity,
            @Nullable String batch) {}

    /** Takes parts off the van of the first person who has one. Without a van nothing moves. */
    public void use(List<Used> parts, UUID report, List<PersonId> people, PersonId by) {
        if (parts.isEmpty()) {
            return;
        }
        // All writers take the rows in one order, so that no two wait for each other.
        List<Used> ordered = parts.stream()
                .sorted(Comparator.comparing(used -> used.part().value()))
                .toList();
        vanOf(people).ifPresent(van -> ordered.forEach(used -> take(used, van, report, by)));
    }

    /** Puts back what a report took that is no longer in force. */
    public void giveBack(UUID report, PersonId by) {
        jdbc.sql("""
                        select part_id, place_id, batch, part_used_id, sum(quantity) as quantity from stock_movements
                        where report_id = :report and reason in ('USED', 'UNCOUNTED')
                        group by part_id, place_id, batch, part_used_id having sum(quantity) <> 0 order by part_id""")
                .param("report", report)
                .query((row, n) -> new Movement(
                        row.getObject("part_id", UUID.class),
                        row.getObject("place_id", UUID.class),
                        row.getBigDecimal("quantity").negate(),
                        row.getString("batch"),
                        MovementReason.CORRECTED,
                        by,
                        report,
                        row.getObject("part_used_id", UUID.class),
                        null,
                        null))
                .list()
                .forEach(movements::add);
    }

    private Optional<UUID> vanOf(List<PersonId> people) {
        return people.stream()
                .flatMap(person -> jdbc
                        .sql("select id from stock_places where person_id = :id")
                        .param("id", person.value())
                        .query(UUID.class)
                        .optional()
                        .stream())
                .findFirst();
    }

    private void take(Used used, UUID van, UUID report, PersonId by) {
        Map<String, BigDecimal> taken = new TreeMap<>();
        BigDecimal open = used.quantity();
        for (Map.Entry<String, BigDecimal> lot : lots(used, van).entrySet()) {
            BigDecimal some = open.min(lot.getValue());
            if (some.signum() > 0) {
                taken.put(lot.getKey(), some);
                open = open.subtract(some);
            }
        }
        if (open.signum() > 0) {
            String batch = used.batch() == null ? "" : used.batch();
            write(used, van, open, batch, MovementReason.UNCOUNTED, report, by);
            taken.merge(batch, open, BigDecimal::add);
        }
        taken.forEach((batch, some) -> write(used, van, some.negate(), batch, MovementReason.USED, report, by));
    }

    private void write(
            Used used, UUID van, BigDecimal quantity, String batch, MovementReason reason, UUID report, PersonId by) {
        movements.add(
                new Movement(used.part().value(), van, quantity, batch, reason, by, report, used.id(), null, null));
    }

    private Map<String, BigDecimal> lots(Used used, UUID van) {
        Map<String, BigDecimal> lots = new TreeMap<>();
        jdbc.sql("""
                        select batch, quantity from stock_levels
                        where place_id = :van and part_id = :part and (batch = :batch or cast(:batch as text) is null) and quantity > 0
                        order by batch for update""")
                .param("van", van)
                .param("part", used.part().value())
                .param("batch", used.batch())
                .query(row -> {
                    lots.put(row.getString("batch"), row.getBigDecimal("quantity"));
                });
        return lots;
    }
}
