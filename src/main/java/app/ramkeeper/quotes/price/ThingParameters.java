package app.ramkeeper.quotes.price;

import java.sql.Types;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;

/** A thing's columns as parameters of a statement, with types so that absent ones are known too. */
final class ThingParameters {

    private ThingParameters() {}

    static MapSqlParameterSource of(UUID id, ThingForm form) {
        return new MapSqlParameterSource("id", id)
                .addValue("code", form.code())
                .addValue("kind", text(form.kind()), Types.VARCHAR)
                .addValue("name", form.name())
                .addValue("unit", form.unit())
                .addValue("modelId", form.modelId(), Types.OTHER)
                .addValue("pipeUse", text(form.pipeUse()), Types.VARCHAR)
                .addValue("material", text(form.material()), Types.VARCHAR)
                .addValue("series", form.series(), Types.VARCHAR)
                .addValue("outsideMm", form.outsideMm(), Types.NUMERIC)
                .addValue("wallMm", form.wallMm(), Types.NUMERIC)
                .addValue("classBar", form.classBar(), Types.NUMERIC)
                .addValue("soldInM", form.soldInM(), Types.NUMERIC)
                .addValue("litres", form.litres(), Types.NUMERIC)
                .addValue("ratingBar", form.ratingBar(), Types.NUMERIC)
                .addValue("drinkingWaterFit", form.drinkingWaterFit(), Types.BOOLEAN)
                .addValue("version", form.version(), Types.INTEGER);
    }

    private static @Nullable String text(@Nullable Enum<?> value) {
        return value == null ? null : value.name();
    }
}
