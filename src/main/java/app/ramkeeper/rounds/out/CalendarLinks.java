package app.ramkeeper.rounds.out;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.IdentitySettings;
import app.ramkeeper.identity.Open;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.signin.Tokens;
import app.ramkeeper.shared.Uuids;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Secret addresses under which calendars read a technician's rounds. A person has one at most; a new one ends the old. */
@Service
@Transactional
public class CalendarLinks {

    private final JdbcClient jdbc;
    private final IdentitySettings settings;
    private final Clock clock;

    CalendarLinks(JdbcClient jdbc, IdentitySettings settings, Clock clock) {
        this.jdbc = jdbc;
        this.settings = settings;
        this.clock = clock;
    }

    /** Somebody who goes out, and since when their link works. */
    public record Holder(
            UUID personId, String name, @Nullable Instant since) {}

    /** Makes a person's link, once to be seen: what is kept cannot give it back. */
    @ForField
    public String make(PersonId person) {
        revoke(person);
        String token = Tokens.next();
        jdbc.sql("insert into calendar_links (id, person_id, token_hash, created_at) values (?, ?, ?, ?)")
                .params(Uuids.next(), person.value(), Tokens.hash(token), now())
                .update();
        return settings.link("/calendar/" + token + "/rounds.ics");
    }

    /** Ends a person's link. */
    @ForField
    public void revoke(PersonId person) {
        jdbc.sql("update calendar_links set revoked_at = ? where person_id = ? and revoked_at is null")
                .params(now(), person.value())
                .update();
    }

    /** Since when a person's link works. */
    @ForField
    @Transactional(readOnly = true)
    public Optional<Instant> since(PersonId person) {
        return jdbc.sql("select created_at from calendar_links where person_id = ? and revoked_at is null")
                .param(person.value())
                .query((row, n) -> row.getTimestamp(1).toInstant())
                .optional();
    }

    /** Everybody's link. */
    @ForOffice
    @Transactional(readOnly = true)
    public List<Holder> all() {
        return jdbc.sql("""
                        select p.id as person_id, p.name, l.created_at as since from people p
                          left join calendar_links l on l.person_id = p.id and l.revoked_at is null
                        where l.id is not null or exists (select from visit_people v where v.person_id = p.id)
                          and (p.left_on is null or p.left_on >= ?) order by folded(p.name), p.id""").param(LocalDate.now(clock)).query(Holder.class).list();
    }

    /** Whose link a secret is; nobody's where it is unknown, revoked, or of somebody who has left or may not sign in any more. */
    @Open
    @Transactional(readOnly = true)
    public Optional<PersonId> behind(String token) {
        return jdbc.sql("""
                        select l.person_id from calendar_links l join people p on p.id = l.person_id
                        where l.token_hash = :hash and l.revoked_at is null and (p.left_on is null or p.left_on >= :today)
                          and not exists (select from accounts a where a.person_id = p.id and a.disabled_at is not null)""")
                .param("hash", Tokens.hash(token))
                .param("today", LocalDate.now(clock))
                .query(UUID.class)
                .optional()
                .map(PersonId::new);
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(java.time.ZoneOffset.UTC);
    }
}
