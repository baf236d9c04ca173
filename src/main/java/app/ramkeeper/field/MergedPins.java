package app.ramkeeper.field;

import app.ramkeeper.fleet.SitesMerged;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** A pin on a merged duplicate becomes a pin on the site that was kept. */
@Component
class MergedPins {

    private final JdbcClient jdbc;

    MergedPins(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @EventListener
    void on(SitesMerged merged) {
        jdbc.sql("""
                        with gone as (delete from pinned_sites where site_id = :duplicate returning person_id, pinned_at)
                        insert into pinned_sites (person_id, site_id, pinned_at) select person_id, :kept, pinned_at from gone
                        on conflict (person_id, site_id) do nothing""")
                .param("kept", merged.kept().value())
                .param("duplicate", merged.duplicate().value())
                .update();
    }
}
