package app.ramkeeper.exchange;

import static app.ramkeeper.exchange.RegisterFields.*;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** The register as rows of a table: what an export writes, and what a row of a file is compared with. */
@Repository
class RegisterRows {

    private static final String ROWS = """
            select i.reference, i.name as install, i.commissioned_on, i.commissioning_known,
              c.name as customer, c.reference as customer_reference, c.billing_address, c.email, c.phone,
              k.name as contact, k.phone as contact_phone, k.email as contact_email,
              s.name as site, s.reference as site_reference, s.locality, d.name as depot, s.latitude, s.longitude, s.altitude_m,
              s.way_in, s.gate, s.source_kind, s.water_class, s.drinking_water, s.private_notes,
              f.fall_m, f.lift_m, f.drive_pipe_material, f.drive_pipe_bore_mm, f.drive_pipe_length_m, f.delivery_pipe,
              f.delivery_pipe_bore_mm, f.delivery_pipe_length_m, f.valve_setting, f.vessel_precharge_bar,
              m.name as model, p.serial,
              (select jsonb_object_agg(tk.code, t.last_done_on) from service_tasks t join task_kinds tk on tk.id = t.task_kind_id
                where t.install_id = i.id and t.last_done_on is not null and t.ended_on is null
                  and (t.pump_id is null or t.pump_id is not distinct from p.id)) as last_done
            from installs i
              join sites s on s.id = i.site_id
              left join depots d on d.id = s.depot_id
              left join lateral (select x.* from site_parties y join customers x on x.id = y.customer_id
                where y.site_id = s.id and y.part = 'OWNER' and y.until_date is null order by y.id limit 1) c on true
              left join lateral (select x.* from site_parties y join contacts x on x.id = y.contact_id
                where y.site_id = s.id and y.part = 'OCCUPIER' and y.until_date is null order by y.id limit 1) k on true
              left join lateral (select x.* from configurations x
                where x.install_id = i.id and x.until_date is null limit 1) f on true
              left join lateral (select x.* from pump_fittings y join pumps x on x.id = y.pump_id
                where y.install_id = i.id and y.until_date is null order by y.place_no limit 1) p on true
              left join pump_models m on m.id = p.model_id""";

    /** What the register holds of the site that a row names, by reference or by owner and name; else of its customer alone. */
    private static final String PLACES = """
            with asked as materialized (
              select u.*,
                case when u.reference is not null
                  then (select s.id from sites s where folded(s.reference) = folded(u.reference) and s.merged_into is null limit 1)
                  else (select s.id from sites s join site_parties y on y.site_id = s.id and y.part = 'OWNER' and y.until_date is null
                      join customers c on c.id = y.customer_id and c.merged_into is null
                    where folded(s.name) = folded(u.site) and s.merged_into is null
                      and (case when u.customer_reference is null then folded(c.name) = folded(u.customer)
                        else folded(c.reference) = folded(u.customer_reference) end) limit 1) end as site_id,
                case when u.customer_reference is not null
                  then (select c.id from customers c where folded(c.reference) = folded(u.customer_reference) and c.merged_into is null limit 1)
                  else (select (array_agg(c.id))[1] from customers c where folded(c.name) = folded(u.customer) and c.merged_into is null
                    having count(*) = 1) end as customer_id
              from unnest(:lines::int[], :references::text[], :sites::text[], :customerReferences::text[], :customers::text[])
                as u(line, reference, site, customer_reference, customer))
            select a.line, c.name as customer, c.reference as customer_reference, c.billing_address, c.email, c.phone,
              k.name as contact, k.phone as contact_phone, k.email as contact_email,
              s.id is not null as known, s.name as site, s.reference as site_reference, s.locality, d.name as depot, s.latitude, s.longitude, s.altitude_m,
              s.way_in, s.gate, s.source_kind, s.water_class, s.drinking_water, s.private_notes
            from asked a
              left join sites s on s.id = a.site_id
              left join depots d on d.id = s.depot_id
              left join lateral (select y.customer_id from site_parties y
                where y.site_id = s.id and y.part = 'OWNER' and y.until_date is null order by y.id limit 1) o on true
              left join customers c on c.id = coalesce(o.customer_id, a.customer_id)
              left join lateral (select x.* from site_parties y join contacts x on x.id = y.contact_id
                where y.site_id = s.id and y.part = 'OCCUPIER' and y.until_date is null order by y.id limit 1) k on true
            where s.id is not null or c.id is not null""";

    private final JdbcClient jdbc;
    private final JsonMapper json;

    RegisterRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** All installs, those with the smallest references first; to be closed. */
    Stream<Map<String, Object>> all() {
        return jdbc
                .sql(ROWS + " order by folded(i.reference), folded(s.name), i.id")
                .withFetchSize(500)
                .query(this::row)
                .stream();
    }

    /**
     * What the register holds of these installs, by the reference asked for. The installs are found by their index first:
     * the rows of all would be put together otherwise.
     */
    Map<String, Map<String, Object>> byReference(Collection<String> references) {
        Map<String, Map<String, Object>> found = new HashMap<>();
        if (!references.isEmpty()) {
            jdbc.sql("""
                            with asked as materialized (
                              select u.reference as asked, i.id from unnest(:asked::text[]) as u(reference)
                                join installs i on folded(i.reference) = folded(u.reference))
                            select asked.asked, held.* from asked cross join lateral (""" + ROWS + " where i.id = asked.id offset 0) held")
                    .param("asked", references.toArray(String[]::new))
                    .query((row, n) -> found.put(row.getString("asked"), row(row, n)))
                    .list();
        }
        return found;
    }

    /** The same for installs without a reference: by the name of customer, site and install. */
    Map<String, Map<String, Object>> byNames(Collection<List<String>> names) {
        Map<String, Map<String, Object>> found = new HashMap<>();
        if (!names.isEmpty()) {
            jdbc.sql(
                            """
                            with asked as materialized (
                              select u.*, i.id from unnest(:customers::text[], :sites::text[], :installs::text[]) as u(customer, site, install)
                                join sites s on folded(s.name) = folded(u.site) and s.merged_into is null
                                join installs i on i.site_id = s.id and folded(i.name) = folded(u.install))
                            select asked.customer || '|' || asked.site || '|' || asked.install as asked, held.*
                            from asked cross join lateral (""" + ROWS
                                    + " where i.id = asked.id offset 0) held where folded(held.customer) = folded(asked.customer)")
                    .param("customers", names.stream().map(n -> n.get(0)).toArray(String[]::new))
                    .param("sites", names.stream().map(n -> n.get(1)).toArray(String[]::new))
                    .param("installs", names.stream().map(n -> n.get(2)).toArray(String[]::new))
                    .query((row, n) -> found.put(row.getString("asked"), row(row, n)))
                    .list();
        }
        return found;
    }

    /** What is there already of the sites and customers that rows name, by the line of the row. */
    Map<Integer, Map<String, Object>> places(List<Parsed> rows) {
        Map<Integer, Map<String, Object>> found = new HashMap<>();
        if (!rows.isEmpty()) {
            jdbc.sql(PLACES)
                    .param("lines", rows.stream().map(Parsed::line).toArray(Integer[]::new))
                    .param("references", texts(rows, SITE_REFERENCE))
                    .param("sites", texts(rows, SITE))
                    .param("customerReferences", texts(rows, CUSTOMER_REFERENCE))
                    .param("customers", texts(rows, CUSTOMER))
                    .query((row, n) -> found.put(row.getInt("line"), place(row)))
                    .list();
        }
        return found;
    }

    private static @Nullable String[] texts(List<Parsed> rows, String code) {
        return rows.stream().map(row -> row.text(code)).toArray(String[]::new);
    }

    private static Map<String, Object> place(ResultSet row) throws SQLException {
        Map<String, Object> values = new LinkedHashMap<>();
        putCustomer(values, row);
        if (row.getBoolean("known")) {
            putSite(values, row);
        }
        return values;
    }

    private Map<String, Object> row(ResultSet row, int n) throws SQLException {
        Map<String, Object> values = new LinkedHashMap<>();
        put(values, REFERENCE, row.getString("reference"));
        put(values, INSTALL, row.getString("install"));
        put(values, COMMISSIONED, commissioned(row));
        put(values, MODEL, row.getString("model"));
        put(values, SERIAL, row.getString("serial"));
        putCustomer(values, row);
        putSite(values, row);
        putWorks(values, row);
        putLastDone(values, row.getString("last_done"));
        return values;
    }

    private static void putCustomer(Map<String, Object> values, ResultSet row) throws SQLException {
        put(values, CUSTOMER, row.getString("customer"));
        put(values, CUSTOMER_REFERENCE, row.getString("customer_reference"));
        put(values, ADDRESS, row.getString("billing_address"));
        put(values, EMAIL, row.getString("email"));
        put(values, PHONE, row.getString("phone"));
    }

    private static void putSite(Map<String, Object> values, ResultSet row) throws SQLException {
        put(values, CONTACT, row.getString("contact"));
        put(values, CONTACT_PHONE, row.getString("contact_phone"));
        put(values, CONTACT_EMAIL, row.getString("contact_email"));
        put(values, SITE, row.getString("site"));
        put(values, SITE_REFERENCE, row.getString("site_reference"));
        put(values, LOCALITY, row.getString("locality"));
        put(values, DEPOT, row.getString("depot"));
        put(values, LATITUDE, degrees(row, "latitude"));
        put(values, LONGITUDE, degrees(row, "longitude"));
        put(values, ALTITUDE, number(row, "altitude_m"));
        put(values, WAY_IN, row.getString("way_in"));
        put(values, GATE, row.getString("gate"));
        put(values, SOURCE, row.getString("source_kind"));
        put(values, WATER, row.getString("water_class"));
        put(values, DRINKING, row.getBoolean("drinking_water") ? "yes" : "no");
        put(values, NOTES, row.getString("private_notes"));
    }

    private static void putWorks(Map<String, Object> values, ResultSet row) throws SQLException {
        put(values, FALL, number(row, "fall_m"));
        put(values, LIFT, number(row, "lift_m"));
        put(values, DRIVE_MATERIAL, row.getString("drive_pipe_material"));
        put(values, DRIVE_BORE, number(row, "drive_pipe_bore_mm"));
        put(values, DRIVE_LENGTH, number(row, "drive_pipe_length_m"));
        put(values, DELIVERY_PIPE, row.getString("delivery_pipe"));
        put(values, DELIVERY_BORE, number(row, "delivery_pipe_bore_mm"));
        put(values, DELIVERY_LENGTH, number(row, "delivery_pipe_length_m"));
        put(values, SETTING, row.getString("valve_setting"));
        put(values, PRECHARGE, number(row, "vessel_precharge_bar"));
    }

    private void putLastDone(Map<String, Object> values, @Nullable String lastDone) {
        if (lastDone != null) {
            json.readValue(lastDone, new TypeReference<Map<String, String>>() {})
                    .forEach((kind, day) -> values.put(LAST + kind, day));
        }
    }

    private static @Nullable String commissioned(ResultSet row) throws SQLException {
        String day = row.getString("commissioned_on");
        return day != null || row.getBoolean("commissioning_known") ? day : Parsed.UNKNOWN;
    }

    private static @Nullable Double degrees(ResultSet row, String column) throws SQLException {
        Double value = number(row, column);
        return value == null ? null : RegisterReader.centimetre(value);
    }

    private static @Nullable Double number(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? null : value;
    }

    private static void put(Map<String, Object> values, String code, @Nullable Object value) {
        if (value != null) {
            values.put(code, value);
        }
    }
}
