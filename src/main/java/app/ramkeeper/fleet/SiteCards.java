package app.ramkeeper.fleet;

import app.ramkeeper.identity.DepotId;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Reads a site with all that hangs on it in one statement. */
@Component
class SiteCards {

    private static final String SQL = """
            select s.*, d.name as depot_name, d.latitude as depot_latitude,
              d.longitude as depot_longitude, c.name as catchment_name, coalesce(c.biosecurity, 'CLEAN') as biosecurity,
              w.name as water_class_name,
              (select coalesce(jsonb_agg(jsonb_build_object('kind', h.kind, 'text', h.text) order by h.kind, h.id), '[]')
                 from site_hazards h where h.site_id = s.id) as hazards,
              (select coalesce(jsonb_agg(jsonb_build_object('weekday', a.weekday, 'from', a.from_time, 'until', a.until_time)
                   order by a.weekday, a.from_time), '[]') from access_windows a where a.site_id = s.id) as windows,
              (select coalesce(jsonb_agg(jsonb_build_object('from', p.from_date, 'until', p.until_date, 'reason', p.reason)
                   order by p.from_date), '[]') from closed_periods p where p.site_id = s.id and p.until_date >= :today) as closed,
              (select coalesce(jsonb_agg(jsonb_build_object('part', p.part,
                     'customer', case when u.id is not null then jsonb_build_object('value', u.id) end,
                     'contact', case when k.id is not null then jsonb_build_object('value', k.id) end,
                     'name', coalesce(u.name, k.name), 'phone', coalesce(u.phone, k.phone),
                     'email', coalesce(u.email, k.email), 'from', p.from_date, 'share', p.share)
                   order by array_position(array['OWNER', 'OCCUPIER', 'KEY_HOLDER', 'PAYER', 'LANDOWNER_CROSSED'], p.part), p.id), '[]')
                 from site_parties p left join customers u on u.id = p.customer_id left join contacts k on k.id = p.contact_id
                 where p.site_id = s.id and daterange(p.from_date, p.until_date) @> cast(:today as date)) as parties
            from sites s
              left join depots d on d.id = s.depot_id
              left join catchments c on c.id = s.catchment_id
              left join water_classes w on w.code = s.water_class
            where s.id = coalesce((select merged_into from sites where id = :id), :id)""";

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    SiteCards(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    Optional<SiteCard> find(SiteId id) {
        return jdbc.sql(SQL)
                .param("id", id.value())
                .param("today", LocalDate.now(clock))
                .query(this::card)
                .optional();
    }

    private SiteCard card(ResultSet rs, int n) throws SQLException {
        Columns row = new Columns(rs);
        return new SiteCard(
                new SiteId(row.id("id")),
                row.orNull("reference"),
                row.text("name"),
                row.orNull("locality"),
                row.id("depot_id", DepotId::new),
                row.orNull("depot_name"),
                row.position("depot_"),
                row.id("catchment_id", CatchmentId::new),
                row.orNull("catchment_name"),
                Biosecurity.valueOf(row.text("biosecurity")),
                row.position(),
                row.number("altitude_m"),
                row.orNull("way_in"),
                row.orNull("gate"),
                row.whole("walk_minutes"),
                row.word("source_kind", SourceKind.class),
                row.orNull("water_class"),
                row.orNull("water_class_name"),
                row.flag("drinking_water"),
                json.readValue(row.text("hazards"), new TypeReference<>() {}),
                json.readValue(row.text("windows"), new TypeReference<>() {}),
                json.readValue(row.text("closed"), new TypeReference<>() {}),
                json.readValue(row.text("parties"), new TypeReference<>() {}));
    }
}
