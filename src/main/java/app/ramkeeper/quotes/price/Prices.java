package app.ramkeeper.quotes.price;

import app.ramkeeper.identity.ForAll;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What things cost on a day. Things without a price that day are left out. */
@Service
@ForAll
@Transactional(readOnly = true)
public class Prices {

    private static final String ON_DAY = " join prices p on p.thing_id = t.id and p.from_date <= :day"
            + " and (p.until_date is null or p.until_date >= :day) where t.withdrawn_on is null ";
    private static final String THING = "select t.id, t.code, t.kind, t.name, t.unit, t.model_id, t.litres,"
            + " t.rating_bar, t.drinking_water_fit, p.price, p.cost from priced_things t" + ON_DAY;

    private final JdbcClient jdbc;

    Prices(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Pump models in use that have a price, by price. */
    public List<PricedModel> models(LocalDate day) {
        Map<UUID, List<PricedModel.Point>> points = points();
        return jdbc.sql("select m.*, p.price from priced_things t join pump_models m on m.id = t.model_id" + ON_DAY
                        + " and t.kind = 'PUMP' and m.withdrawn_on is null order by p.price, m.name")
                .param("day", day)
                .query((row, number) -> PriceRows.model(row, points))
                .list();
    }

    /** Pipes for a use, smallest first. */
    public List<PricedPipeRow> pipes(LocalDate day, PipeUse use) {
        return jdbc.sql("select t.id, t.code, t.name, t.pipe_use, t.material, t.series, t.outside_mm, t.wall_mm,"
                        + " t.class_bar, t.sold_in_m, t.drinking_water_fit, p.price, p.cost from priced_things t"
                        + ON_DAY
                        + " and t.kind = 'PIPE' and t.pipe_use in ('BOTH', :use)"
                        + " order by t.outside_mm, t.class_bar, t.code")
                .param("day", day)
                .param("use", use.name())
                .query(PricedPipeRow.class)
                .list();
    }

    /** All things of a kind, by size, then price. */
    public List<PricedThing> of(PriceKind kind, LocalDate day) {
        return jdbc.sql(THING + "and t.kind = :kind order by t.litres nulls last, p.price, t.code")
                .param("day", day)
                .param("kind", kind.name())
                .query(PricedThing.class)
                .list();
    }

    /** One thing, if it has a price that day. */
    public Optional<PricedThing> byId(UUID id, LocalDate day) {
        return jdbc.sql(THING + "and t.id = :id")
                .param("day", day)
                .param("id", id)
                .query(PricedThing.class)
                .optional();
    }

    /** The pump itself, or the fittings kit, of a model. */
    public Optional<PricedThing> ofModel(PriceKind kind, UUID model, LocalDate day) {
        return jdbc.sql(THING + "and t.kind = :kind and t.model_id = :model")
                .param("day", day)
                .param("kind", kind.name())
                .param("model", model)
                .query(PricedThing.class)
                .optional();
    }

    /** How quotes are reckoned. */
    public QuoteSettings settings() {
        return jdbc.sql("select * from quote_settings")
                .query(QuoteSettings.class)
                .single();
    }

    private Map<UUID, List<PricedModel.Point>> points() {
        record Row(UUID model, PricedModel.Point point) {}
        return jdbc
                .sql("select * from pump_model_performance order by model_id, fall_m, lift_m, drive_flow_l_min")
                .query((row, number) -> new Row(
                        row.getObject("model_id", UUID.class),
                        new PricedModel.Point(
                                row.getDouble("fall_m"),
                                row.getDouble("lift_m"),
                                row.getDouble("drive_flow_l_min"),
                                row.getDouble("delivered_l_min"))))
                .list()
                .stream()
                .collect(Collectors.groupingBy(Row::model, Collectors.mapping(Row::point, Collectors.toList())));
    }
}
