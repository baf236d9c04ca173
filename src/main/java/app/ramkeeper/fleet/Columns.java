package app.ramkeeper.fleet;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads columns of a row by name; an absent value is null. */
record Columns(ResultSet row) {

    String text(String name) throws SQLException {
        return row.getString(name);
    }

    @Nullable
    String orNull(String name) throws SQLException {
        return row.getString(name);
    }

    boolean flag(String name) throws SQLException {
        return row.getBoolean(name);
    }

    UUID id(String name) throws SQLException {
        return row.getObject(name, UUID.class);
    }

    <T> @Nullable T id(String name, Function<UUID, T> type) throws SQLException {
        UUID value = row.getObject(name, UUID.class);
        return value == null ? null : type.apply(value);
    }

    @Nullable
    LocalDate date(String name) throws SQLException {
        return row.getObject(name, LocalDate.class);
    }

    @Nullable
    Double number(String name) throws SQLException {
        return row.getObject(name, Double.class);
    }

    @Nullable
    Integer whole(String name) throws SQLException {
        return row.getObject(name, Integer.class);
    }

    <E extends Enum<E>> @Nullable E word(String name, Class<E> type) throws SQLException {
        String value = row.getString(name);
        return value == null ? null : Enum.valueOf(type, value);
    }

    @Nullable
    Position position() throws SQLException {
        return position("");
    }

    /** A position whose columns begin with a word. */
    @Nullable
    Position position(String prefix) throws SQLException {
        Double latitude = number(prefix + "latitude");
        Double longitude = number(prefix + "longitude");
        return latitude == null || longitude == null ? null : new Position(latitude, longitude);
    }
}
