package app.ramkeeper.quotes.offer;

import java.sql.Types;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Keeps the discounts of revisions. */
@Repository
class DiscountStore {

    private final JdbcClient jdbc;

    DiscountStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Discount> of(UUID revision) {
        return jdbc.sql("select id, line_group, percent, amount, text from quote_discounts where revision_id = ?"
                        + " order by position, id")
                .param(revision)
                .query(Discount.class)
                .list();
    }

    void add(UUID revision, int position, Discount discount) {
        jdbc.sql("insert into quote_discounts (id, revision_id, position, line_group, percent, amount, text)"
                        + " values (:id, :revision, :position, :group, :percent, :amount, :text)")
                .paramSource(new MapSqlParameterSource("id", discount.id())
                        .addValue("revision", revision)
                        .addValue("position", position)
                        .addValue(
                                "group",
                                discount.lineGroup() == null
                                        ? null
                                        : discount.lineGroup().name(),
                                Types.VARCHAR)
                        .addValue("percent", discount.percent(), Types.NUMERIC)
                        .addValue("amount", discount.amount(), Types.NUMERIC)
                        .addValue("text", discount.text(), Types.VARCHAR))
                .update();
    }

    boolean remove(UUID revision, UUID discount) {
        return jdbc.sql("delete from quote_discounts where id = ? and revision_id = ?")
                        .params(discount, revision)
                        .update()
                == 1;
    }
}
