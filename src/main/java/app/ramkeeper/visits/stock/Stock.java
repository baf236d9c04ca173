package app.ramkeeper.visits.stock;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.visits.stock.Movements.Movement;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the office does to stock by hand: receive, move, count, scrap. Nothing goes below nothing. */
@Service
@ForOffice
@Transactional
class Stock {

    private static final Logger LOG = LoggerFactory.getLogger(Stock.class);

    private final JdbcClient jdbc;
    private final Movements movements;

    Stock(JdbcClient jdbc, Movements movements) {
        this.jdbc = jdbc;
        this.movements = movements;
    }

    /**
     * Does one step; the same form again changes nothing.
     *
     * @throws Conflict if there is less than is to leave
     */
    void take(StockStep step, StockForm form, PersonId by) {
        Stream.of(form.place(), step == StockStep.MOVE ? form.to() : null)
                .filter(Objects::nonNull)
                .sorted(Comparator.naturalOrder())
                .forEach(place -> hold(place, form));
        if (done(form)) {
            return;
        }
        UUID place = Objects.requireNonNull(form.place());
        BigDecimal quantity = Objects.requireNonNull(form.quantity());
        BigDecimal there = there(place, form);
        switch (step) {
            case RECEIVE -> add(form, place, quantity, MovementReason.RECEIVED, by);
            case MOVE -> {
                require(there, quantity);
                add(form, place, quantity.negate(), MovementReason.MOVED, by);
                add(form, Objects.requireNonNull(form.to()), quantity, MovementReason.MOVED, by);
            }
            case SCRAP -> {
                require(there, quantity);
                add(form, place, quantity.negate(), MovementReason.SCRAPPED, by);
            }
            case COUNT -> {
                if (quantity.compareTo(there) != 0) {
                    add(form, place, quantity.subtract(there), MovementReason.COUNTED, by);
                }
            }
        }
        LOG.info("Stock {} of part {} at place {}", step, form.part(), place);
    }

    private static void require(BigDecimal there, BigDecimal quantity) {
        if (there.compareTo(quantity) < 0) {
            throw new Conflict("Only %s of it in this place, of this batch. Count it, or choose another batch."
                    .formatted(there.stripTrailingZeros().toPlainString()));
        }
    }

    private void add(StockForm form, UUID place, BigDecimal quantity, MovementReason reason, PersonId by) {
        movements.add(new Movement(
                Objects.requireNonNull(form.part()),
                place,
                quantity,
                form.lot(),
                reason,
                by,
                null,
                null,
                form.move(),
                form.note()));
    }

    /** Whoever else takes from this place waits here. */
    private void hold(@Nullable UUID place, StockForm form) {
        jdbc.sql("select 1 from stock_levels where place_id = :place and part_id = :part and batch = :batch for update")
                .param("place", place)
                .param("part", form.part())
                .param("batch", form.lot())
                .query(Integer.class)
                .optional();
    }

    private BigDecimal there(UUID place, StockForm form) {
        return jdbc.sql(
                        "select quantity from stock_levels where place_id = :place and part_id = :part and batch = :batch")
                .param("place", place)
                .param("part", form.part())
                .param("batch", form.lot())
                .query(BigDecimal.class)
                .optional()
                .orElse(BigDecimal.ZERO);
    }

    private boolean done(StockForm form) {
        return jdbc.sql("select exists (select 1 from stock_movements where move_id = :move)")
                .param("move", form.move())
                .query(Boolean.class)
                .single();
    }
}
