package app.ramkeeper.quotes.offer;

import java.sql.Types;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Rows of a revision's lines. */
@Repository
class LineStore {

    private final JdbcClient jdbc;

    LineStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<QuoteLine> of(UUID revision) {
        return jdbc.sql("select * from quote_lines where revision_id = ? order by position, id")
                .param(revision)
                .query(QuoteLine.class)
                .list();
    }

    void add(UUID revision, int position, QuoteLine line) {
        jdbc.sql("""
                        insert into quote_lines (id, revision_id, position, line_group, text, note, quantity, unit, price, cost,
                          discount_percent, tax_name, tax_percent, thing_id, by_hand)
                        values (:id, :revision, :position, :group, :text, :note, :quantity, :unit, :price, :cost, :discount, :taxName,
                          :taxPercent, :thing, :byHand)""")
                .paramSource(parameters(line).addValue("revision", revision).addValue("position", position))
                .update();
    }

    boolean change(UUID revision, QuoteLine line) {
        return jdbc.sql("""
                        update quote_lines set line_group = :group, text = :text, note = :note, quantity = :quantity, unit = :unit,
                          price = :price, cost = :cost, discount_percent = :discount, tax_name = :taxName, tax_percent = :taxPercent,
                          by_hand = :byHand, version = version + 1
                        where id = :id and revision_id = :revision and version = :version""")
                        .paramSource(
                                parameters(line).addValue("revision", revision).addValue("version", line.version()))
                        .update()
                == 1;
    }

    boolean remove(UUID revision, UUID line) {
        return jdbc.sql("delete from quote_lines where id = ? and revision_id = ?")
                        .params(line, revision)
                        .update()
                == 1;
    }

    private static MapSqlParameterSource parameters(QuoteLine line) {
        return new MapSqlParameterSource("id", line.id())
                .addValue("group", line.lineGroup().name())
                .addValue("text", line.text())
                .addValue("note", line.note(), Types.VARCHAR)
                .addValue("quantity", line.quantity())
                .addValue("unit", line.unit())
                .addValue("price", line.price(), Types.NUMERIC)
                .addValue("cost", line.cost(), Types.NUMERIC)
                .addValue("discount", line.discountPercent())
                .addValue("taxName", line.taxName())
                .addValue("taxPercent", line.taxPercent())
                .addValue("thing", line.thingId(), Types.OTHER)
                .addValue("byHand", line.byHand());
    }
}
