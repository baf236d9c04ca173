package app.ramkeeper.quotes.price;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Reads rows that the plain mapping cannot. */
final class PriceRows {

    private PriceRows() {}

    static PricedModel model(ResultSet row, Map<UUID, List<PricedModel.Point>> points) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        return new PricedModel(
                id,
                row.getString("name"),
                number(row, "drive_bore_mm"),
                number(row, "fall_min_m"),
                number(row, "fall_max_m"),
                number(row, "lift_max_m"),
                number(row, "drive_flow_min_l_min"),
                number(row, "drive_flow_max_l_min"),
                number(row, "max_pressure_bar"),
                number(row, "mass_kg"),
                row.getString("vessel_kind"),
                row.getBigDecimal("price"),
                points.getOrDefault(id, List.of()));
    }

    private static @Nullable Double number(ResultSet row, String column) throws SQLException {
        BigDecimal value = row.getBigDecimal(column);
        return row.wasNull() ? null : value.doubleValue();
    }
}
