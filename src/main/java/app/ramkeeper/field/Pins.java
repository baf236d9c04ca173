package app.ramkeeper.field;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Missing;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The sites whose photos and drawings a person takes along besides those of the week's own visits. */
@Service
@ForField
@Transactional
public class Pins {

    /** How many sites one person may pin. */
    public static final int MOST = 20;

    private final JdbcClient jdbc;
    private final Clock clock;

    Pins(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** The person's pinned sites, in a fixed order. */
    @Transactional(readOnly = true)
    public List<UUID> of(PersonId person) {
        return jdbc.sql("select site_id from pinned_sites where person_id = :person order by site_id")
                .param("person", person.value())
                .query(UUID.class)
                .list();
    }

    /** Says that one more site would be too many. */
    public static final class TooMany extends RuntimeException {
        TooMany() {
            super("You have pinned " + MOST + " sites, the most a phone takes along. Unpin one first.");
        }
    }

    /** Says that the pins were changed from elsewhere meanwhile. */
    static final class Changed extends RuntimeException {}

    /**
     * Pins a site or takes the pin away; doing it twice changes nothing.
     *
     * @throws TooMany if it is one too many
     */
    public void set(PersonId person, SiteId site, boolean pinned) {
        Set<UUID> wanted = new LinkedHashSet<>(held(person));
        if (pinned ? wanted.add(site.value()) : wanted.remove(site.value())) {
            keep(person, wanted);
        }
    }

    /**
     * Puts these pins in place of those the caller saw.
     *
     * @param seen the mark of the pins it is based on
     * @throws Changed if they are others by now
     */
    List<UUID> replace(PersonId person, String seen, Set<UUID> wanted) {
        if (!seen.equals(mark(held(person)))) {
            throw new Changed();
        }
        keep(person, wanted);
        return of(person);
    }

    /** The same for the same pins. */
    static String mark(List<UUID> pins) {
        return Intake.sha256(pins.toString()).substring(0, 32);
    }

    /** The pins, with the person's row held so that two changes come one after the other. */
    private List<UUID> held(PersonId person) {
        jdbc.sql("select 1 from people where id = :person for no key update")
                .param("person", person.value())
                .query(Integer.class)
                .optional();
        return of(person);
    }

    private void keep(PersonId person, Set<UUID> wanted) {
        if (wanted.size() > MOST) {
            throw new TooMany();
        }
        for (UUID site : wanted) {
            if (!jdbc.sql("select exists (select 1 from sites where id = :site and merged_into is null)")
                    .param("site", site)
                    .query(Boolean.class)
                    .single()) {
                throw new Missing("site", site);
            }
        }
        of(person).stream()
                .filter(site -> !wanted.contains(site))
                .forEach(site -> jdbc.sql("delete from pinned_sites where person_id = :person and site_id = :site")
                        .param("person", person.value())
                        .param("site", site)
                        .update());
        wanted.forEach(site -> pin(person.value(), site));
    }

    private void pin(UUID person, UUID site) {
        jdbc.sql("""
                        insert into pinned_sites (person_id, site_id, pinned_at) values (:person, :site, :now)
                        on conflict (person_id, site_id) do nothing""")
                .param("person", person)
                .param("site", site)
                .param("now", Timestamp.from(clock.instant()))
                .update();
    }
}
