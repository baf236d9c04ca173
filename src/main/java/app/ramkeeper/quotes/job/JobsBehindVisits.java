package app.ramkeeper.quotes.job;

import app.ramkeeper.visits.WorksBehind;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Says of a visit which job it belongs to, whether that is on hold, and that nobody commissions what is not installed. */
@Repository
class JobsBehindVisits implements WorksBehind {

    private final JdbcClient jdbc;

    JobsBehindVisits(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Works> of(Collection<UUID> visits) {
        if (visits.isEmpty()) {
            return List.of();
        }
        return jdbc.sql("""
                        select v.id as visit, 'quote ' || coalesce(q.number || ', ', '') || q.title as of,
                          (select p.held_because from job_phases p where p.job_id = j.id and p.held_since is not null and p.done_on is null
                             order by p.position limit 1) as held,
                          f.id as first, f.planned_on as first_on, '/jobs/' || j.id || '/pick-list' as pick_list
                        from jobs j join quotes q on q.id = j.id join visits v on v.id in (j.installation_visit, j.commissioning_visit)
                          left join visits f on f.id = j.installation_visit and v.id = j.commissioning_visit and f.state in ('PLANNED', 'COULD_NOT')
                        where v.id = any(:visits) and j.ended_on is null""")
                .param("visits", visits.toArray(UUID[]::new))
                .query(Works.class)
                .list();
    }
}
