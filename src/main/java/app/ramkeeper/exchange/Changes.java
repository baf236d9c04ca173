package app.ramkeeper.exchange;

import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Finds what else has changed since an import, from the audit trail and from what refers to its rows. */
@Repository
class Changes {

    private final JdbcClient jdbc;

    Changes(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A sentence that names the first lines whose rows were changed or used since; empty if none were. */
    Optional<String> since(ImportId id) {
        List<String> changed = jdbc.sql("""
                        with made as (
                          select r.line, t.name, i.id from import_rows r, jsonb_each(r.made) as t(name, ids),
                            jsonb_array_elements_text(t.ids) as i(id)
                          where r.import_id = :id and r.state = 'APPLIED')
                        select distinct line from made m where exists (
                            select from audit_entries a where a.table_name = m.name and a.row_id = m.id and a.source <> :source)
                          or (m.name = 'sites' and (
                            exists (select from visits v where v.site_id = m.id::uuid)
                            or exists (select from visit_reports v where v.site_id = m.id::uuid)
                            or exists (select from calls c where c.site_id = m.id::uuid)
                            or exists (select from installs i where i.site_id = m.id::uuid
                              and not exists (select from made n where n.name = 'installs' and n.id = i.id::text))))
                          or (m.name = 'installs' and exists (select from report_works w where w.install_id = m.id::uuid))
                        order by line limit 6""")
                .param("id", id.value())
                .param("source", ImportJobs.source(id))
                .query(String.class)
                .list();
        return changed.isEmpty() ? Optional.empty() : Optional.of(sentence(changed) + histories(id));
    }

    /** Which visit histories were brought in on top of this import, in a sentence; empty if none was. */
    private String histories(ImportId id) {
        List<String> files =
                jdbc.sql("""
                        select distinct h.file_name from import_rows r, jsonb_array_elements_text(r.made -> 'sites') as site(id),
                          visit_reports v, import_rows hr join imports h on h.id = hr.import_id and h.kind = 'HISTORY'
                        where r.import_id = :id and r.state = 'APPLIED' and v.site_id = site.id::uuid
                          and hr.state = 'APPLIED' and hr.made -> 'visit_reports' ->> 0 = v.id::text
                        order by 1 limit 3""").param("id", id.value()).query(String.class).list();
        return files.isEmpty()
                ? ""
                : " Visits from “" + String.join("”, “", files)
                        + "” stand there: where nothing else has changed, take that import back first, then this one.";
    }

    /** A sentence that names the first lines whose reports were corrected or withdrawn since. */
    Optional<String> correctedSince(ImportId id) {
        List<String> changed =
                jdbc.sql("""
                        select r.line from import_rows r, jsonb_array_elements_text(r.made -> 'visit_reports') as made(id)
                        where r.import_id = :id and r.state = 'APPLIED'
                          and exists (select from visit_reports s where s.supersedes = made.id::uuid)
                        order by r.line limit 6""").param("id", id.value()).query(String.class).list();
        return changed.isEmpty() ? Optional.empty() : Optional.of(sentence(changed));
    }

    private static String sentence(List<String> lines) {
        String some = String.join(", ", lines.subList(0, Math.min(5, lines.size())));
        return "This import can no longer be taken back as a whole: what came from line " + some
                + (lines.size() > 5 ? " and more" : "")
                + " was changed or used since. Correct those things on their own pages.";
    }
}
