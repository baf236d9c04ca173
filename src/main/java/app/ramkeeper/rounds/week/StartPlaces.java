package app.ramkeeper.rounds.week;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.identity.PersonId;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Where each technician's day begins and ends: at the depot, unless a place of their own is put down. */
@Service
@ForSetup
@Transactional
public class StartPlaces {

    private final JdbcClient jdbc;
    private final Clock clock;

    StartPlaces(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A technician with their place; without one both ends are the depot. */
    public record Place(
            UUID personId,
            String name,
            @Nullable String depot,
            boolean depotKnown,
            @Nullable String startsAt,
            @Nullable String endsAt,
            @Nullable Double latitude,
            @Nullable Double longitude,
            @Nullable Integer version) {

        public @Nullable Position position() {
            return latitude == null || longitude == null ? null : new Position(latitude, longitude);
        }
    }

    /** Everybody who goes out, by name. */
    @Transactional(readOnly = true)
    public List<Place> all() {
        return jdbc.sql("""
                        select p.id as person_id, p.name, d.name as depot, d.latitude is not null as depot_known, r.starts_at, r.ends_at, r.latitude, r.longitude, r.version
                        from people p left join depots d on d.id = p.depot_id left join round_places r on r.person_id = p.id
                          left join accounts a on a.person_id = p.id
                        where (p.left_on is null or p.left_on >= :today) and (p.started_on is null or p.started_on <= :today)
                          and (a.id is null and not p.of_history or exists (select from account_roles o where o.account_id = a.id and o.role = 'TECHNICIAN'))
                        order by folded(p.name), p.id""")
                .param("today", LocalDate.now(clock))
                .query(Place.class)
                .list();
    }

    /**
     * Puts down a place of somebody's own, and at which end of the day it counts.
     *
     * @param seen the version of the place that was looked at; null if there was none
     * @return false if somebody else has changed it since; then nothing is done
     */
    public boolean change(PersonId person, boolean starts, boolean ends, Position place, @Nullable Integer seen) {
        return jdbc.sql("""
                        insert into round_places as r (person_id, starts_at, ends_at, latitude, longitude)
                        select :person, :starts, :ends, :latitude, :longitude
                          where :seen::int is null or exists (select from round_places where person_id = :person)
                        on conflict (person_id) do update set starts_at = excluded.starts_at, ends_at = excluded.ends_at,
                          latitude = excluded.latitude, longitude = excluded.longitude, version = r.version + 1
                          where r.version = :seen::int""")
                        .param("person", person.value())
                        .param("starts", starts ? "HOME" : "DEPOT")
                        .param("ends", ends ? "HOME" : "DEPOT")
                        .param("latitude", place.latitude())
                        .param("longitude", place.longitude())
                        .param("seen", seen)
                        .update()
                > 0;
    }

    /**
     * Both ends at the depot again; the place of their own is forgotten.
     *
     * @param seen the version of the place that was looked at; null if there was none
     * @return false if somebody else has changed it since; then nothing is done
     */
    public boolean forget(PersonId person, @Nullable Integer seen) {
        jdbc.sql("delete from round_places where person_id = :person and version = :seen::int")
                .param("person", person.value())
                .param("seen", seen)
                .update();
        return jdbc.sql("select count(*) from round_places where person_id = ?")
                        .param(person.value())
                        .query(Integer.class)
                        .single()
                == 0;
    }
}
