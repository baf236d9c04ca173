package app.ramkeeper.fleet;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/** Reads installs as they stand today, each with configuration, baseline and pumps, in one statement. */
@Component
class InstallCards {

    private static final String SQL = """
            select i.*, s.name as site_name, s.water_class, s.drinking_water,
              r.state, r.from_date as state_since, r.reason as state_reason,
              c.id as configuration_id, c.install_id, c.from_date, c.until_date, c.reason,
            """ + ConfigurationCards.COLUMNS + """
              , (select coalesce(jsonb_agg(jsonb_build_object('id', jsonb_build_object('value', p.id), 'serial', p.serial,
                     'model', case when m.id is not null then jsonb_build_object('value', m.id) end, 'modelName', m.name,
                     'placeNo', f.place_no, 'fittedOn', f.from_date, 'loan', f.place = 'LOAN') order by f.place_no), '[]')
                 from pump_fittings f join pumps p on p.id = f.pump_id left join pump_models m on m.id = p.model_id
                 where f.install_id = i.id and daterange(f.from_date, f.until_date) @> cast(:today as date)) as pumps
            from installs i
              join sites s on s.id = i.site_id
              left join running_states r on r.install_id = i.id and daterange(r.from_date, r.until_date) @> cast(:today as date)
              left join configurations c on c.install_id = i.id and c.until_date is null
              left join baselines b on b.configuration_id = c.id
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    InstallCards(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    List<InstallCard> byId(UUID id) {
        return read("where i.id = :id", id);
    }

    List<InstallCard> ofSite(UUID site) {
        return read(
                "where i.site_id = coalesce((select merged_into from sites where id = :id), :id)"
                        + " order by i.retired_on is not null, i.name, i.id",
                site);
    }

    private List<InstallCard> read(String where, UUID id) {
        return jdbc.sql(SQL + where)
                .param("id", id)
                .param("today", LocalDate.now(clock))
                .query(this::card)
                .list();
    }

    private InstallCard card(ResultSet rs, int n) throws SQLException {
        Columns row = new Columns(rs);
        return new InstallCard(
                new InstallId(row.id("id")),
                new SiteId(row.id("site_id")),
                row.text("site_name"),
                row.orNull("reference"),
                row.text("name"),
                row.date("commissioned_on"),
                row.flag("commissioning_known"),
                row.date("retired_on"),
                row.date("warranty_until"),
                row.orNull("water_class"),
                row.flag("drinking_water"),
                row.word("state", RunningState.class),
                row.date("state_since"),
                row.orNull("state_reason"),
                row.orNull("configuration_id") == null ? null : ConfigurationCards.card(row),
                json.readValue(row.text("pumps"), new TypeReference<>() {}));
    }
}
