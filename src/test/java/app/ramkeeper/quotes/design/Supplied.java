package app.ramkeeper.quotes.design;

import app.ramkeeper.shared.Uuids;
import java.math.BigDecimal;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Pumps and pipes with prices, for tests. */
public final class Supplied {

    private final JdbcClient jdbc;

    public Supplied(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A pump that makes the same of the water's energy at every duty round about this fall and lift. */
    public UUID pump(double fall, double lift, double efficiency) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into pump_models (id, name, drive_bore_mm, fall_min_m, fall_max_m, lift_max_m, drive_flow_min_l_min,
                          drive_flow_max_l_min, max_pressure_bar)
                        values (:id, :name, 80, :low, :high, :lift, 10, 1000, 40)""")
                .param("id", id)
                .param("name", "Pump " + id)
                .param("low", fall / 2)
                .param("high", fall * 1.5)
                .param("lift", lift * 1.5)
                .update();
        for (double f : new double[] {fall / 2, fall, fall * 1.5}) {
            for (double l : new double[] {lift * 0.9, lift, lift * 1.5}) {
                for (double q : new double[] {10, 1000}) {
                    if (l > f) {
                        jdbc.sql(
                                        "insert into pump_model_performance (model_id, fall_m, lift_m, drive_flow_l_min, delivered_l_min)"
                                                + " values (?, ?, ?, ?, ?)")
                                .params(id, f, l, q, efficiency * q * f / l)
                                .update();
                    }
                }
            }
        }
        price(thing("PUMP", "Pump " + id, id), "1000");
        return id;
    }

    public UUID pipe(String use, String material, double outsideMm, double wallMm, double classBar, String perMetre) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into priced_things (id, code, kind, name, unit, pipe_use, material, series, outside_mm, wall_mm, class_bar, drinking_water_fit)
                        values (:id, :code, 'PIPE', :name, 'm', :use, :material, 's', :outside, :wall, :class, true)""")
                .param("id", id)
                .param("code", "T-" + id)
                .param("name", "Pipe " + id)
                .param("use", use)
                .param("material", material)
                .param("outside", outsideMm)
                .param("wall", wallMm)
                .param("class", classBar)
                .update();
        price(id, perMetre);
        return id;
    }

    public void vessel(double litres, double ratingBar) {
        UUID id = Uuids.next();
        jdbc.sql("""
                        insert into priced_things (id, code, kind, name, unit, litres, rating_bar)
                        values (:id, :code, 'VESSEL', 'Vessel', 'piece', :litres, :rating)""")
                .param("id", id)
                .param("code", "T-" + id)
                .param("litres", litres)
                .param("rating", ratingBar)
                .update();
        price(id, "95");
    }

    private UUID thing(String kind, String name, UUID model) {
        UUID id = Uuids.next();
        jdbc.sql("insert into priced_things (id, code, kind, name, unit, model_id) values (?, ?, ?, ?, 'piece', ?)")
                .params(id, "T-" + id, kind, name, model)
                .update();
        return id;
    }

    private void price(UUID thing, String price) {
        jdbc.sql("insert into prices (id, thing_id, from_date, price) values (?, ?, date '2020-01-01', ?)")
                .params(Uuids.next(), thing, new BigDecimal(price))
                .update();
    }
}
