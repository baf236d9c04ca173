package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Counts visits in vain at a locked gate; after the third one running the office must ring before anybody drives. */
@Component
class LockedGates {

    static final int ENOUGH = 3;

    private final JdbcClient jdbc;

    LockedGates(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    boolean mustRing(SiteId site) {
        return inVain(site) >= ENOUGH;
    }

    /** How many visits running, up to the last, ended at a locked gate. */
    int inVain(SiteId site) {
        return jdbc.sql("""
                        select count(*) from current_reports r
                        where r.site_id = :site and r.outcome = 'COULD_NOT' and r.reason = 'LOCKED_GATE'
                          and not exists (select 1 from current_reports later where later.site_id = :site
                            and later.outcome <> 'COULD_NOT' and (later.attended_on, later.recorded_at) > (r.attended_on, r.recorded_at))""").param("site", site.value()).query(Integer.class).single();
    }

    /** Marks what is still planned at the site once there were enough. */
    void markPlanned(SiteId site) {
        if (mustRing(site)) {
            jdbc.sql("""
                            update visits set office_must_ring = true, version = version + 1
                            where site_id = :site and state = 'PLANNED' and not office_must_ring""").param("site", site.value()).update();
        }
    }
}
