package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.CustomerSearch;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.web.Cursor;
import app.ramkeeper.web.Slice;
import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads what the customer pages list. */
@Component
@Transactional(readOnly = true)
class CustomerLists {

    private static final int PAGE = 50;
    private static final String COLUMNS = """
            select c.id, c.reference, c.name, c.phone, c.email,
              (select count(distinct p.site_id) from site_parties p where p.customer_id = c.id and p.until_date is null) as sites,
              folded(c.name) as sort from customers c where c.merged_into is null
            """;

    /** A line of the list. */
    record Row(
            UUID id,
            @Nullable String reference,
            String name,
            @Nullable String phone,
            @Nullable String email,
            long sites,
            String sort) {}

    /** A part that a customer plays or played at a site. */
    record PartRow(
            UUID site,
            String siteName,
            SitePart part,
            @Nullable LocalDate from,
            @Nullable LocalDate until) {}

    /** An agreement with the number of installs it covers; the price is for the office. */
    record AgreementRow(
            UUID id,
            @Nullable String number,
            LocalDate from,
            @Nullable LocalDate until,
            String covers,
            @Nullable BigDecimal price,
            @Nullable LocalDate renewal,
            long installs) {}

    private final JdbcClient jdbc;
    private final CustomerSearch search;

    CustomerLists(JdbcClient jdbc, CustomerSearch search) {
        this.jdbc = jdbc;
        this.search = search;
    }

    /** A customer who still stands for himself, as a search would show him. */
    Optional<Row> byId(UUID id) {
        return jdbc.sql(COLUMNS + " and c.id = ?")
                .param(id)
                .query(CustomerLists::row)
                .optional();
    }

    Slice<Row> page(@Nullable String after) {
        Optional<List<String>> keys = Cursor.read(after, 2).filter(k -> isId(k.get(1)));
        List<Row> rows = jdbc.sql(COLUMNS
                        + (keys.isPresent() ? "and (folded(c.name), c.id) > (:name, cast(:id as uuid))" : "")
                        + " order by folded(c.name), c.id limit " + (PAGE + 1))
                .param("name", keys.map(k -> k.get(0)).orElse(""))
                .param("id", keys.map(k -> k.get(1)).orElse(null))
                .query(CustomerLists::row)
                .list();
        long count = jdbc.sql(
                        "select count(*) from (select from customers where merged_into is null limit 1001) as capped")
                .query(Long.class)
                .single();
        if (rows.size() <= PAGE) {
            return new Slice<>(rows, null, count);
        }
        Row last = rows.get(PAGE - 1);
        return new Slice<>(rows.subList(0, PAGE), Cursor.of(last.sort(), last.id()), count);
    }

    /** Customers by half a name or their reference, best first. */
    List<Row> find(String typed, int limit) {
        return search.find(typed, limit).stream()
                .map(c -> new Row(c.id(), c.reference(), c.name(), c.phone(), c.email(), c.sites(), ""))
                .toList();
    }

    List<PartRow> parts(CustomerId id) {
        return jdbc.sql("""
                        select s.id, s.name, p.part, p.from_date, p.until_date from site_parties p
                          join sites s on s.id = p.site_id
                        where p.customer_id = :id order by p.until_date is not null, folded(s.name), p.part""")
                .param("id", id.value())
                .query((rs, n) -> new PartRow(
                        rs.getObject(1, UUID.class),
                        rs.getString(2),
                        SitePart.valueOf(rs.getString(3)),
                        rs.getObject(4, LocalDate.class),
                        rs.getObject(5, LocalDate.class)))
                .list();
    }

    List<AgreementRow> agreements(CustomerId id) {
        return jdbc.sql("""
                        select a.*, (select count(*) from agreement_installs i
                          where i.agreement_id = a.id and i.until_date is null) as installs
                        from agreements a where a.customer_id = :id order by a.from_date desc, a.id""")
                .param("id", id.value())
                .query((rs, n) -> new AgreementRow(
                        rs.getObject("id", UUID.class),
                        rs.getString("number"),
                        rs.getObject("from_date", LocalDate.class),
                        rs.getObject("until_date", LocalDate.class),
                        rs.getString("covers"),
                        rs.getBigDecimal("price"),
                        rs.getObject("renewal_on", LocalDate.class),
                        rs.getLong("installs")))
                .list();
    }

    /** Whom a merged customer now is, if it was merged. */
    Optional<UUID> keptFor(UUID id) {
        return jdbc.sql("select merged_into from customers where id = :id and merged_into is not null")
                .param("id", id)
                .query(UUID.class)
                .optional();
    }

    private static Row row(ResultSet rs, int n) throws SQLException {
        return new Row(
                rs.getObject("id", UUID.class),
                rs.getString("reference"),
                rs.getString("name"),
                rs.getString("phone"),
                rs.getString("email"),
                rs.getLong("sites"),
                rs.getString("sort"));
    }

    static boolean isId(String text) {
        return text.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");
    }
}
