package app.ramkeeper.visits.stock;

import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Uuids;
import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Writes rows of the ledger; the database keeps the levels and refuses to go below nothing. */
@Repository
class Movements {

    private final JdbcClient jdbc;
    private final Clock clock;

    Movements(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** One row: what came (above 0) or left (below 0). */
    record Movement(
            UUID part,
            UUID place,
            BigDecimal quantity,
            String batch,
            MovementReason reason,
            PersonId by,
            @Nullable UUID report,
            @Nullable UUID partUsed,
            @Nullable UUID move,
            @Nullable String note) {}

    void add(Movement m) {
        jdbc.sql("""
                        insert into stock_movements (id, part_id, place_id, quantity, batch, at, by_person, reason, report_id, part_used_id, move_id, note)
                        values (:id, :part, :place, :quantity, :batch, :at, :by, :reason, :report, :used, :move, :note)""")
                .param("id", Uuids.next())
                .param("part", m.part())
                .param("place", m.place())
                .param("quantity", m.quantity())
                .param("batch", m.batch())
                .param("at", Timestamp.from(clock.instant()))
                .param("by", m.by().value())
                .param("reason", m.reason().name())
                .param("report", m.report())
                .param("used", m.partUsed())
                .param("move", m.move())
                .param("note", m.note())
                .update();
    }
}
