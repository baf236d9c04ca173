package app.ramkeeper.visits.calls;

import app.ramkeeper.fleet.SitesMerged;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Moves what is still to do, and what shows the way, from a merged duplicate to the site that was kept; what was done stays
 * where it was said.
 */
@Component
class MergedSites {

    private final JdbcClient jdbc;

    MergedSites(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @EventListener
    void on(SitesMerged merged) {
        move("visits", "state = 'PLANNED'", merged);
        move("calls", "true", merged);
        move("follow_ups", "done_on is null", merged);
        jdbc.sql("""
                        update site_pictures p set site_id = :kept where site_id = :duplicate
                          and not exists (select 1 from site_pictures o where o.site_id = :kept and o.sha256 = p.sha256)""")
                .param("kept", merged.kept().value())
                .param("duplicate", merged.duplicate().value())
                .update();
    }

    private void move(String table, String which, SitesMerged merged) {
        jdbc.sql("update " + table + " set site_id = :kept, version = version + 1 where site_id = :duplicate and "
                        + which)
                .param("kept", merged.kept().value())
                .param("duplicate", merged.duplicate().value())
                .update();
    }
}
