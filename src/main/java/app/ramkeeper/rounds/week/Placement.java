package app.ramkeeper.rounds.week;

import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Keeps the positions of a plan's stops to 1, 2, 3 ... */
final class Placement {

    private Placement() {}

    static void renumber(JdbcClient jdbc, UUID plan) {
        jdbc.sql("""
                        update week_stops w set position = n.place from (
                          select id, row_number() over (partition by person_id, day order by position, id)::int as place
                          from week_stops where plan_id = :plan and day is not null) n
                        where n.id = w.id and n.place <> w.position""").param("plan", plan).update();
    }
}
