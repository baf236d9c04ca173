package app.ramkeeper.catalogue;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Reads kinds, models and parts for lists and forms. */
@Repository
class CatalogueQuery {

    private static final String KIND = """
            select k.id, code, name, scope, schedule, minutes, crew, watched,
                   array(select skill from task_kind_skills s where s.task_kind_id = k.id order by skill) as skills
            from task_kinds k where withdrawn_on is null""";
    private static final String MODEL = "select * from pump_models where withdrawn_on is null";
    private static final String PART = "select * from parts where withdrawn_on is null";

    private static final RowMapper<TaskKindCard> KIND_CARD = (row, number) -> new TaskKindCard(
            new TaskKindId(row.getObject("id", UUID.class)),
            row.getString("code"),
            row.getString("name"),
            Scope.valueOf(row.getString("scope")),
            Schedule.valueOf(row.getString("schedule")),
            row.getInt("minutes"),
            row.getInt("crew"),
            row.getBoolean("watched"),
            List.of((String[]) row.getArray("skills").getArray()));
    private static final RowMapper<PumpModelCard> MODEL_CARD = (row, number) -> new PumpModelCard(
            new PumpModelId(row.getObject("id", UUID.class)),
            row.getString("name"),
            row.getBigDecimal("drive_bore_mm"),
            row.getBigDecimal("mass_kg"),
            row.getBigDecimal("max_pressure_bar"),
            VesselKind.valueOf(row.getString("vessel_kind")),
            row.getBoolean("snifter"),
            row.getInt("delivery_valves"),
            row.getInt("waste_valves"));
    private static final RowMapper<PartCard> PART_CARD = (row, number) -> new PartCard(
            new PartId(row.getObject("id", UUID.class)),
            row.getString("number"),
            row.getString("name"),
            row.getString("unit"),
            PartKind.valueOf(row.getString("kind")),
            row.getBoolean("drinking_water_fit"),
            null,
            null);

    private final JdbcClient jdbc;

    CatalogueQuery(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<TaskKindCard> taskKinds() {
        return jdbc.sql(KIND + " order by name").query(KIND_CARD).list();
    }

    Optional<TaskKindCard> taskKind(String code) {
        return jdbc.sql(KIND + " and code = ?").param(code).query(KIND_CARD).optional();
    }

    List<PumpModelCard> pumpModels() {
        return jdbc.sql(MODEL + " order by name").query(MODEL_CARD).list();
    }

    Optional<PumpModelCard> pumpModel(String name) {
        return jdbc.sql(MODEL + " and folded(name) = folded(?)")
                .param(name)
                .query(MODEL_CARD)
                .optional();
    }

    List<PartCard> parts() {
        return jdbc.sql(PART + " order by number").query(PART_CARD).list();
    }

    Optional<PartCard> part(String number) {
        return jdbc.sql(PART + " and folded(number) = folded(?)")
                .param(number)
                .query(PART_CARD)
                .optional();
    }

    List<PartToBring> partsToBring(Collection<UUID> kinds, Collection<UUID> models) {
        return jdbc.sql("""
                        select tp.task_kind_id, fit.model_id, tp.part_kind, fit.id as part_id, fit.number, fit.name,
                               coalesce(fit.position, nullif(tp.position, '')) as position,
                               coalesce(fit.quantity, tp.quantity) as quantity
                        from task_kind_parts tp
                        left join (select mp.model_id, mp.position, mp.quantity, p.id, p.number, p.name, p.kind
                                   from pump_model_parts mp join parts p on p.id = mp.part_id
                                   where mp.model_id = any(?) and p.withdrawn_on is null) fit
                          on fit.kind = tp.part_kind and (tp.position = '' or tp.position = fit.position)
                        where tp.task_kind_id = any(?)
                        order by tp.part_kind, fit.number""")
                .param(models.toArray(UUID[]::new))
                .param(kinds.toArray(UUID[]::new))
                .query((row, number) -> new PartToBring(
                        row.getObject("task_kind_id", UUID.class),
                        orNull(row.getObject("model_id", UUID.class)),
                        PartKind.valueOf(row.getString("part_kind")),
                        orNull(row.getObject("part_id", UUID.class)),
                        row.getString("number"),
                        row.getString("name"),
                        row.getString("position"),
                        row.getBigDecimal("quantity")))
                .list();
    }

    private static @Nullable UUID orNull(@Nullable UUID id) {
        return id;
    }
}
