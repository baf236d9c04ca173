package app.ramkeeper.fleet;

import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.ForRegister;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the system round the pump and its lines as they were laid; takes wrongly noted components out again. */
@Service
@ForRegister
@Transactional
public class SystemRegister {

    private final JdbcClient jdbc;

    SystemRegister(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Notes an element under an id made by the form, so that a second post of it changes nothing. */
    public void add(UUID id, InstallId install, SystemElement element) {
        Position position = element.position();
        jdbc.sql("""
                        insert into system_elements (id, install_id, kind, name, latitude, longitude, note)
                        values (:id, :install, :kind, :name, :latitude, :longitude, :note) on conflict (id) do nothing""")
                .param("id", id)
                .param("install", install.value())
                .param("kind", element.kind().name())
                .param("name", element.name())
                .param("latitude", position == null ? null : position.latitude())
                .param("longitude", position == null ? null : position.longitude())
                .param("note", element.note())
                .update();
    }

    public void removeElement(InstallId install, UUID element) {
        remove("system_elements", install, element);
    }

    /** Strikes out a component that was noted wrongly; one that was taken out keeps its row with the day. */
    public void removeComponent(InstallId install, UUID component) {
        remove("components", install, component);
    }

    private void remove(String table, InstallId install, UUID row) {
        int removed = jdbc.sql("delete from " + table + " where id = :id and install_id = :install")
                .param("id", row)
                .param("install", install.value())
                .update();
        if (removed == 0) {
            throw new Missing("part of the system", row);
        }
    }

    /** What people call an element of an install. */
    @ForAll
    @Transactional(readOnly = true)
    public String nameOf(InstallId install, UUID element) {
        return jdbc.sql("select name from system_elements where id = :id and install_id = :install")
                .param("id", element)
                .param("install", install.value())
                .query(String.class)
                .optional()
                .orElseThrow(() -> new Missing("part of the system", element));
    }

    /** The points of a line in their order. */
    @ForAll
    @Transactional(readOnly = true)
    public List<AsBuiltPoint> points(InstallId install, UUID element) {
        nameOf(install, element);
        return jdbc.sql("select * from as_built_points where element_id = :element order by seq")
                .param("element", element)
                .query((rs, n) -> {
                    Columns row = new Columns(rs);
                    Double latitude = row.number("latitude");
                    Double longitude = row.number("longitude");
                    return new AsBuiltPoint(
                            PointKind.valueOf(rs.getString("kind")),
                            row.number("chainage_m"),
                            row.number("level_m"),
                            latitude == null || longitude == null ? null : new Position(latitude, longitude),
                            rs.getString("note"));
                })
                .list();
    }

    /** Keeps the points of a line in their order, in place of the earlier ones. */
    public void keepPoints(InstallId install, UUID element, List<AsBuiltPoint> points) {
        nameOf(install, element);
        jdbc.sql("delete from as_built_points where element_id = :element")
                .param("element", element)
                .update();
        int seq = 1;
        for (AsBuiltPoint point : points) {
            Position position = point.position();
            jdbc.sql("""
                            insert into as_built_points (id, element_id, seq, kind, chainage_m, level_m, latitude, longitude, note)
                            values (:id, :element, :seq, :kind, :chainage, :level, :latitude, :longitude, :note)""")
                    .param("id", Uuids.next())
                    .param("element", element)
                    .param("seq", seq++)
                    .param("kind", point.kind().name())
                    .param("chainage", point.chainageM())
                    .param("level", point.levelM())
                    .param("latitude", position == null ? null : position.latitude())
                    .param("longitude", position == null ? null : position.longitude())
                    .param("note", point.note())
                    .update();
        }
    }
}
