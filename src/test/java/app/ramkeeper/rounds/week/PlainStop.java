package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A planned service in somebody's round that asks for nothing besides its time. */
final class PlainStop {

    private PlainStop() {}

    /** The stop of a site; agreed for a time of its day, or not agreed. */
    static Stop of(
            UUID site,
            Position where,
            int minutes,
            @Nullable LocalTime agreed,
            double worth,
            UUID who,
            LocalDate day,
            int position) {
        return new Stop(
                UUID.randomUUID(),
                site,
                "Beck " + position,
                null,
                where.latitude(),
                where.longitude(),
                "CLEAN",
                null,
                UUID.randomUUID(),
                "SERVICE",
                minutes,
                1,
                null,
                true,
                agreed == null ? null : day,
                agreed,
                null,
                worth,
                0,
                "planned",
                null,
                null,
                false,
                who,
                day,
                position,
                false,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                "PLANNED",
                agreed == null ? "NONE" : "CONFIRMED",
                null,
                null,
                false,
                null,
                null,
                null,
                null,
                false,
                null,
                null);
    }
}
