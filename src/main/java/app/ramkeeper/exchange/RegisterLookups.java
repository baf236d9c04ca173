package app.ramkeeper.exchange;

import app.ramkeeper.fleet.CustomerId;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.DepotId;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Finds what rows of a register name, for a whole batch in one statement each. Answers by what was asked. */
@Repository
class RegisterLookups {

    private final JdbcClient jdbc;

    RegisterLookups(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Position> depotPositions() {
        return jdbc.sql("select latitude, longitude from depots where latitude is not null")
                .query((row, n) -> new Position(row.getDouble(1), row.getDouble(2)))
                .list();
    }

    Map<String, DepotId> depots() {
        Map<String, DepotId> depots = new HashMap<>();
        jdbc.sql("select id, name from depots")
                .query((row, n) ->
                        depots.put(Fold.of(row.getString("name")), new DepotId(row.getObject("id", UUID.class))))
                .list();
        return depots;
    }

    /** Where the pumps with these serials are: a word for the place. */
    Map<String, String> serials(Collection<String> serials) {
        return words("""
                select asked.text as asked, coalesce((select s.name || ', ' || i.name from pump_fittings f
                    join installs i on i.id = f.install_id join sites s on s.id = i.site_id
                    where f.pump_id = p.id and f.until_date is null limit 1), 'no install') as said
                from unnest(:asked::text[]) as asked(text) join pumps p on folded(p.serial) = folded(asked.text)""", serials);
    }

    Map<String, CustomerId> customersByReference(Collection<String> references) {
        Map<String, CustomerId> found = new HashMap<>();
        ids("""
                select asked.text as asked, c.id from unnest(:asked::text[]) as asked(text)
                  join customers c on folded(c.reference) = folded(asked.text) and c.merged_into is null""", references).forEach((asked, ids) -> found.put(Fold.of(asked), new CustomerId(ids.get(0))));
        return found;
    }

    /** Customers by name; several have the same one at times. */
    Map<String, List<UUID>> customersByName(Collection<String> names) {
        return ids("""
                select asked.text as asked, c.id from unnest(:asked::text[]) as asked(text)
                  join customers c on folded(c.name) = folded(asked.text) and c.merged_into is null""", names);
    }

    Map<String, SiteId> sitesByReference(Collection<String> references) {
        Map<String, SiteId> found = new HashMap<>();
        ids("""
                select asked.text as asked, s.id from unnest(:asked::text[]) as asked(text)
                  join sites s on folded(s.reference) = folded(asked.text) and s.merged_into is null""", references).forEach((asked, ids) -> found.put(Fold.of(asked), new SiteId(ids.get(0))));
        return found;
    }

    /** All sites of these customers, by customer and folded name. */
    Map<String, SiteId> sitesOf(Collection<CustomerId> customers) {
        Map<String, SiteId> found = new HashMap<>();
        jdbc.sql("""
                        select p.customer_id, s.name, s.id from site_parties p join sites s on s.id = p.site_id
                        where p.customer_id = any(:customers) and p.part = 'OWNER' and p.until_date is null and s.merged_into is null""")
                .param("customers", customers.stream().map(CustomerId::value).toArray(UUID[]::new))
                .query((row, n) -> found.put(
                        row.getString("customer_id") + "|" + Fold.of(row.getString("name")),
                        new SiteId(row.getObject("id", UUID.class))))
                .list();
        return found;
    }

    /** Things that earlier imports brought in with the same content. */
    Map<String, String> broughtBefore(Collection<String> things) {
        return words("""
                select asked.text as asked, r.content as said from unnest(:asked::text[]) as asked(text)
                  join import_rows r on folded(r.thing) = folded(asked.text) and r.state = 'APPLIED'
                  where r.content is not null""", things);
    }

    private Map<String, String> words(String sql, Collection<String> asked) {
        Map<String, String> found = new HashMap<>();
        if (!asked.isEmpty()) {
            jdbc.sql(sql)
                    .param("asked", asked.toArray(String[]::new))
                    .query((row, n) -> found.put(row.getString("asked"), row.getString("said")))
                    .list();
        }
        return found;
    }

    private Map<String, List<UUID>> ids(String sql, Collection<String> asked) {
        Map<String, List<UUID>> found = new HashMap<>();
        if (!asked.isEmpty()) {
            jdbc.sql(sql)
                    .param("asked", asked.toArray(String[]::new))
                    .query((row, n) -> found.merge(
                            row.getString("asked"), List.of(row.getObject("id", UUID.class)), RegisterLookups::both))
                    .list();
        }
        return found;
    }

    private static List<UUID> both(List<UUID> some, List<UUID> more) {
        List<UUID> both = new java.util.ArrayList<>(some);
        both.addAll(more);
        return both;
    }
}
