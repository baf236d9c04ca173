package app.ramkeeper.visits.stock;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.math.BigDecimal;
import java.sql.Types;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reads what lies where, how it came there, and where a batch went. */
@Service
@ForOffice
@Transactional(readOnly = true)
class StockQueries {

    private static final int PAGE = 100;
    private static final String LEVELS = """
            from stock_levels l join stock_places w on w.id = l.place_id join parts p on p.id = l.part_id
            where l.quantity > 0 and (l.place_id = :place or cast(:place as uuid) is null)
              and (folded(p.number || ' ' || p.name) like :q or cast(:q as text) is null)
            """;
    private static final String MOVEMENTS = """
            from stock_movements m join stock_places w on w.id = m.place_id join parts p on p.id = m.part_id join people b on b.id = m.by_person
            where (m.place_id = :place or cast(:place as uuid) is null) and (m.part_id = :part or cast(:part as uuid) is null)
            """;

    private final JdbcClient jdbc;

    StockQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What lies in a place, of one batch. */
    public record Level(
            UUID placeId,
            String place,
            UUID partId,
            String number,
            String name,
            String unit,
            String batch,
            BigDecimal quantity) {}

    /** A row of the ledger. */
    public record Moved(
            UUID id,
            Instant at,
            String place,
            String number,
            String name,
            String batch,
            BigDecimal quantity,
            String reason,
            String who,
            @Nullable UUID reportId,
            @Nullable String note) {}

    /** Where a part of a batch is fitted, or was used. */
    public record Fitted(
            UUID siteId,
            String site,
            @Nullable String locality,
            UUID installId,
            String install,
            String part,
            String batch,
            @Nullable LocalDate on,
            boolean removed,
            boolean drinkingWater) {}

    Slice<Level> onHand(@Nullable UUID place, @Nullable String q, @Nullable String after) {
        Optional<List<String>> keys = Cursor.read(after, 3);
        List<Level> rows = filtered(
                        "select l.place_id, w.name as place, l.part_id, p.number, p.name, p.unit, l.batch, l.quantity "
                                + LEVELS + " and (:first or (p.number, w.name, l.batch) > (:number, :name, :batch))"
                                + " order by p.number, w.name, l.batch limit :limit",
                        place,
                        q)
                .param("first", keys.isEmpty())
                .param("number", keys.map(k -> k.get(0)).orElse(""))
                .param("name", keys.map(k -> k.get(1)).orElse(""))
                .param("batch", keys.map(k -> k.get(2)).orElse(""))
                .param("limit", PAGE + 1)
                .query(Level.class)
                .list();
        long count = filtered("select count(*) from (select 1 " + LEVELS + " limit 1001) as c", place, q)
                .query(Long.class)
                .single();
        return slice(rows, last -> Cursor.of(last.number(), last.place(), last.batch()), count);
    }

    private JdbcClient.StatementSpec filtered(String sql, @Nullable UUID place, @Nullable String q) {
        String words = q == null
                ? null
                : jdbc.sql("select folded(:q)")
                        .param("q", q)
                        .query(String.class)
                        .single();
        return jdbc.sql(sql)
                .param("place", place, Types.OTHER)
                .param("q", words == null ? null : "%" + words.replaceAll("([\\\\%_])", "\\\\$1") + "%");
    }

    Slice<Moved> movements(@Nullable UUID place, @Nullable UUID part, @Nullable String after) {
        Optional<List<String>> keys = Cursor.read(after, 2);
        List<Moved> rows;
        try {
            rows = jdbc.sql(
                            "select m.id, m.at, w.name as place, p.number, p.name, m.batch, m.quantity, m.reason, b.name as who,"
                                    + " m.report_id, m.note " + MOVEMENTS
                                    + " and (:first or m.at < :at or (m.at = :at and m.id > :id)) order by m.at desc, m.id limit :limit")
                    .param("place", place, Types.OTHER)
                    .param("part", part, Types.OTHER)
                    .param("first", keys.isEmpty())
                    .param(
                            "at",
                            keys.map(k -> Instant.parse(k.get(0)))
                                    .orElse(Instant.EPOCH)
                                    .atOffset(ZoneOffset.UTC))
                    .param("id", keys.map(k -> UUID.fromString(k.get(1))).orElse(new UUID(0, 0)))
                    .param("limit", PAGE + 1)
                    .query(Moved.class)
                    .list();
        } catch (DateTimeException | IllegalArgumentException brokenCursor) {
            return movements(place, part, null);
        }
        long count = jdbc.sql("select count(*) from (select 1 " + MOVEMENTS + " limit 1001) as c")
                .param("place", place, Types.OTHER)
                .param("part", part, Types.OTHER)
                .query(Long.class)
                .single();
        return slice(rows, last -> Cursor.of(last.at(), last.id()), count);
    }

    /** All sites with a part of this batch, however its name is written. */
    List<Fitted> fitted(String batch) {
        return jdbc.sql("""
                        select s.id as site_id, s.name as site, s.locality, i.id as install_id, i.name as install, x.part, x.batch,
                          max(x.on) as on, bool_and(x.removed) as removed, s.drinking_water
                        from (
                          select c.install_id, coalesce(p.number || ' ' || p.name, lower(replace(c.position, '_', ' '))) as part, c.batch,
                            c.fitted_on as on, c.removed_on is not null as removed
                          from components c left join parts p on p.id = c.part_id where folded(c.batch) = folded(:batch)
                          union all
                          select u.install_id, coalesce(p.number || ' ' || p.name, u.part_text), u.batch, r.attended_on, exists (
                              select 1 from components c where c.install_id = u.install_id and c.part_id = u.part_id
                                and folded(c.batch) = folded(:batch) and c.removed_on is not null)
                          from parts_used u join current_reports r on r.id = u.report_id left join parts p on p.id = u.part_id
                          where folded(u.batch) = folded(:batch)) x
                        join installs i on i.id = x.install_id join sites s on s.id = i.site_id
                        group by s.id, i.id, x.part, x.batch order by bool_and(x.removed), s.drinking_water desc, s.name, i.name, x.part""").param("batch", batch).query(Fitted.class).list();
    }

    /** What lies in stock of this batch. */
    List<Level> inStock(String batch) {
        return jdbc.sql("""
                        select l.place_id, w.name as place, l.part_id, p.number, p.name, p.unit, l.batch, l.quantity
                        from stock_levels l join stock_places w on w.id = l.place_id join parts p on p.id = l.part_id
                        where l.batch <> '' and folded(l.batch) = folded(:batch) and l.quantity > 0 order by w.name, p.number""").param("batch", batch).query(Level.class).list();
    }

    private static <T> Slice<T> slice(List<T> rows, Function<T, String> cursor, long count) {
        boolean more = rows.size() > PAGE;
        List<T> shown = more ? rows.subList(0, PAGE) : rows;
        return new Slice<>(shown, more ? cursor.apply(shown.get(shown.size() - 1)) : null, count);
    }
}
