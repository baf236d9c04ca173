package app.ramkeeper.exchange;

import static app.ramkeeper.exchange.HistoryFields.TECHNICIAN;
import static app.ramkeeper.exchange.RegisterFields.*;

import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Counts what the ready rows of an import would make, by the rules of {@link RegisterWriter} and {@link HistoryTarget}. */
@Repository
class Makes {

    private static final String REGISTER = """
            with ready as (select folded(cells ->> cast(:customerReference as integer)) as customer_reference, folded(cells ->> cast(:customer as integer)) as customer,
                folded(cells ->> cast(:siteReference as integer)) as site_reference, folded(cells ->> cast(:site as integer)) as site,
                coalesce(cells ->> cast(:model as integer), '') || coalesce(cells ->> cast(:serial as integer), '') <> '' as pump
              from import_rows where import_id = :id and state = 'READY'),
            owned as materialized (select r.*, coalesce('r' || nullif(customer_reference, ''), 'n' || customer) as owner,
                case when customer_reference <> '' then (select c.id from customers c where folded(c.reference) = r.customer_reference and c.merged_into is null)
                  else (select c.id from customers c where folded(c.name) = r.customer and c.merged_into is null limit 1) end as owner_id
              from ready r),
            placed as materialized (select o.*, coalesce('r' || nullif(site_reference, ''), owner || '|' || site) as place,
                case when site_reference <> '' then (select s.id from sites s where folded(s.reference) = o.site_reference and s.merged_into is null)
                  else (select s.id from site_parties p join sites s on s.id = p.site_id where p.customer_id = o.owner_id and p.part = 'OWNER'
                    and p.until_date is null and s.merged_into is null and folded(s.name) = o.site limit 1) end as place_id
              from owned o)
            select count(distinct owner) filter (where owner_id is null) as customers, count(distinct owner_id) as known_customers,
              count(distinct place) filter (where place_id is null) as sites, count(distinct place_id) as known_sites,
              count(*) as installs, count(*) filter (where pump) as pumps, 0 as reports, 0 as people
            from placed""";

    private static final String HISTORY = """
            with ready as (select coalesce(nullif(cells ->> cast(:technician as integer), ''), :nobody) as technician
              from import_rows where import_id = :id and state = 'READY'),
            named as (select distinct regexp_replace(trim(folded(name)), '\\s+', ' ', 'g') as name from ready, regexp_split_to_table(technician, '[,;/&+]|\\yand\\y') as name)
            select 0 as customers, 0 as known_customers, 0 as sites, 0 as known_sites, 0 as installs, 0 as pumps, (select count(*) from ready) as reports,
              (select count(*) from named n where n.name <> '' and not exists (select from people p where regexp_replace(trim(folded(p.name)), '\\s+', ' ', 'g') = n.name)) as people""";

    private final JdbcClient jdbc;

    Makes(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * What comes anew, and what is there already and gets more.
     *
     * @param people that only the history names, without a sign-in
     */
    public record Made(
            long customers,
            long knownCustomers,
            long sites,
            long knownSites,
            long installs,
            long pumps,
            long reports,
            long people) {}

    Made of(Import imported) {
        Mapping mapping = imported.mapping();
        Map<String, Integer> columns = mapping == null ? Map.of() : mapping.columns();
        return jdbc.sql(imported.kind() == ImportKind.REGISTER ? REGISTER : HISTORY)
                .param("id", imported.id().value())
                .param("customerReference", columns.get(CUSTOMER_REFERENCE))
                .param("customer", columns.get(CUSTOMER))
                .param("siteReference", columns.get(SITE_REFERENCE))
                .param("site", columns.get(SITE))
                .param("model", columns.get(MODEL))
                .param("serial", columns.get(SERIAL))
                .param("technician", columns.get(TECHNICIAN))
                .param("nobody", HistoryTarget.NOBODY_NAMED)
                .query(Made.class)
                .single();
    }
}
