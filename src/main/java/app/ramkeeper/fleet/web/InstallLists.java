package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.fleet.ElementKind;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpPlace;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads what the install and pump pages list. */
@Component
@Transactional(readOnly = true)
class InstallLists {

    /** A component with its part's name and the days it was in. */
    record ComponentRow(
            UUID id,
            ComponentPosition position,
            @Nullable String part,
            @Nullable LocalDate fittedOn,
            @Nullable LocalDate removedOn,
            @Nullable String batch,
            @Nullable String serial,
            @Nullable Double ratingBar,
            @Nullable String note) {}

    /** Something of the system round the pump, with how many points its line has. */
    record ElementRow(
            UUID id,
            ElementKind kind,
            String name,
            @Nullable String note,
            long points) {}

    /** Where a pump was when. */
    record FittingRow(
            UUID pump,
            @Nullable String serial,
            PumpPlace place,
            @Nullable UUID install,
            @Nullable String installName,
            @Nullable String siteName,
            @Nullable LocalDate from,
            @Nullable LocalDate until,
            @Nullable String reason) {}

    /** A line of the list of pumps. */
    record PumpRow(
            UUID id,
            @Nullable String serial,
            @Nullable String model,
            @Nullable PumpPlace place,
            @Nullable UUID install,
            @Nullable String siteName,
            @Nullable LocalDate since) {}

    private final JdbcClient jdbc;

    InstallLists(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<ComponentRow> components(InstallId install) {
        return jdbc.sql("""
                        select c.*, p.number || ' ' || p.name as part from components c left join parts p on p.id = c.part_id
                        where c.install_id = :id order by c.removed_on is not null, c.position, c.fitted_on desc nulls last""")
                .param("id", install.value())
                .query((rs, n) -> new ComponentRow(
                        rs.getObject("id", UUID.class),
                        ComponentPosition.valueOf(rs.getString("position")),
                        rs.getString("part"),
                        rs.getObject("fitted_on", LocalDate.class),
                        rs.getObject("removed_on", LocalDate.class),
                        rs.getString("batch"),
                        rs.getString("serial"),
                        rs.getObject("rating_bar", Double.class),
                        rs.getString("note")))
                .list();
    }

    List<ElementRow> elements(InstallId install) {
        return jdbc.sql("""
                        select e.*, (select count(*) from as_built_points p where p.element_id = e.id) as points
                        from system_elements e where e.install_id = :id
                        order by array_position(array['SPRING_BOX', 'FEED_PIPE', 'DRIVE_TANK', 'CHAMBER', 'DELIVERY_LINE',
                          'TREATMENT', 'TANK', 'OVERFLOW', 'FLOAT', 'TROUGH'], e.kind), e.name""")
                .param("id", install.value())
                .query((rs, n) -> new ElementRow(
                        rs.getObject("id", UUID.class),
                        ElementKind.valueOf(rs.getString("kind")),
                        rs.getString("name"),
                        rs.getString("note"),
                        rs.getLong("points")))
                .list();
    }

    List<FittingRow> fittingsOfInstall(UUID install) {
        return fittings("f.install_id = :id", install);
    }

    List<FittingRow> fittingsOfPump(UUID pump) {
        return fittings("f.pump_id = :id", pump);
    }

    private List<FittingRow> fittings(String where, UUID id) {
        return jdbc.sql("""
                        select f.*, p.serial, i.name as install_name, s.name as site_name from pump_fittings f
                          join pumps p on p.id = f.pump_id left join installs i on i.id = f.install_id
                          left join sites s on s.id = i.site_id where\s""" + where + " order by f.until_date desc nulls first, f.from_date desc nulls last")
                .param("id", id)
                .query((rs, n) -> new FittingRow(
                        rs.getObject("pump_id", UUID.class),
                        rs.getString("serial"),
                        PumpPlace.valueOf(rs.getString("place")),
                        rs.getObject("install_id", UUID.class),
                        rs.getString("install_name"),
                        rs.getString("site_name"),
                        rs.getObject("from_date", LocalDate.class),
                        rs.getObject("until_date", LocalDate.class),
                        rs.getString("reason")))
                .list();
    }

    /** Pumps by serial, model or place; the newest first when nothing is sought. */
    List<PumpRow> pumps(@Nullable String q, @Nullable PumpPlace place, int limit) {
        return pumps(q, place, false, limit);
    }

    /** Those that stand in no install. */
    List<PumpRow> sparePumps(int limit) {
        return pumps(null, null, true, limit);
    }

    private List<PumpRow> pumps(@Nullable String q, @Nullable PumpPlace place, boolean spare, int limit) {
        return jdbc.sql("""
                        select p.id, p.serial, m.name as model, f.place, f.install_id, s.name as site_name, f.from_date from pumps p
                          left join pump_models m on m.id = p.model_id
                          left join pump_fittings f on f.pump_id = p.id and f.until_date is null
                          left join installs i on i.id = f.install_id left join sites s on s.id = i.site_id
                        where (cast(:place as text) is null or f.place = :place) and (not :spare or f.install_id is null)
                          and (cast(:q as text) is null or folded(p.serial) like '%' || folded(:like) || '%'
                            or folded(:q) % folded(p.serial) or folded(m.name) = folded(:q))
                        order by similarity(folded(coalesce(:q, '')), folded(coalesce(p.serial, ''))) desc, folded(p.serial), p.id
                        limit :limit""")
                .param("place", place == null ? null : place.name())
                .param("spare", spare)
                .param("q", q)
                .param("like", q == null ? "" : q.replaceAll("([%_\\\\])", "\\\\$1"))
                .param("limit", limit)
                .query((rs, n) -> new PumpRow(
                        rs.getObject("id", UUID.class),
                        rs.getString("serial"),
                        rs.getString("model"),
                        rs.getString("place") == null ? null : PumpPlace.valueOf(rs.getString("place")),
                        rs.getObject("install_id", UUID.class),
                        rs.getString("site_name"),
                        rs.getObject("from_date", LocalDate.class)))
                .list();
    }
}
