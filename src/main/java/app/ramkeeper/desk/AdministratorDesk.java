package app.ramkeeper.desk;

import app.ramkeeper.identity.ForAdministrator;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What the administrator must know first: what in the register keeps the lists from being right. */
@Service
@ForAdministrator
@Transactional(readOnly = true)
class AdministratorDesk {

    private final JdbcClient jdbc;

    AdministratorDesk(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Something to put right: how many, what, and where. */
    public record ToMend(long count, String key, String path) {}

    List<ToMend> toMend() {
        return jdbc.sql("""
                        select (select count(*) from service_tasks where ended_on is null and done_by = 'US' and due_on is null and last_done_as = 'UNKNOWN') as count,
                          'desk.mend.unknownDates' as key, '/fix-lists' as path
                        union all select (select count(*) from sites where latitude is null and merged_into is null), 'desk.mend.noPosition', '/fix-lists'
                        union all select (select count(*) from accounts a where disabled_at is null
                          and not exists (select from account_roles r where r.account_id = a.id)), 'desk.mend.noRole', '/people'
                        union all select (select count(*) from people p where left_on is null
                          and not exists (select from accounts a where a.person_id = p.id)), 'desk.mend.noAccount', '/people'""").query(ToMend.class).list();
    }
}
