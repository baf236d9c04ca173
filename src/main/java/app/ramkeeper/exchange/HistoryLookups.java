package app.ramkeeper.exchange;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Finds the installs and people that rows of a history name, for a whole batch in one statement each. */
@Repository
class HistoryLookups {

    private static final String INSTALL = """
            select asked.text as asked, i.id, i.site_id, i.commissioned_on,
              (select (array_agg(f.pump_id))[1] from pump_fittings f where f.install_id = i.id and f.until_date is null
                having count(*) = 1) as pump
            from unnest(:asked::text[]) as asked(text)""";

    private final JdbcClient jdbc;

    HistoryLookups(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * An install that a row may mean.
     *
     * @param pump its pump, if just one stands there
     */
    record Found(
            UUID install,
            UUID site,
            @Nullable LocalDate commissionedOn,
            @Nullable UUID pump) {}

    /** An earlier row about the same visit: its content, and its line and file in words. */
    record Before(String content, String where) {}

    Map<String, List<Found>> byReference(Collection<String> references) {
        return find(INSTALL + " join installs i on folded(i.reference) = folded(asked.text)", references);
    }

    Map<String, List<Found>> bySerial(Collection<String> serials) {
        return find(INSTALL + """
                 join pumps p on folded(p.serial) = folded(asked.text)
                 join pump_fittings x on x.pump_id = p.id and x.until_date is null join installs i on i.id = x.install_id""", serials);
    }

    Map<String, List<Found>> bySite(Collection<String> sites) {
        return find(INSTALL + """
                 join sites s on (folded(s.name) = folded(asked.text) or folded(s.reference) = folded(asked.text)) and s.merged_into is null
                 join installs i on i.site_id = s.id""", sites);
    }

    /** People by folded name. */
    Map<String, UUID> people() {
        Map<String, UUID> people = new HashMap<>();
        jdbc.sql("select id, name from people order by left_on nulls first, id desc")
                .query((row, n) -> people.put(Fold.name(row.getString("name")), row.getObject("id", UUID.class)))
                .list();
        return people;
    }

    /** What earlier imports said of the same visits. */
    Map<String, Before> before(Collection<String> things) {
        Map<String, Before> found = new HashMap<>();
        jdbc.sql("""
                        select asked.text as asked, r.content, format('line %s of “%s”', r.line, i.file_name) as place
                        from unnest(:asked::text[]) as asked(text)
                          join import_rows r on folded(r.thing) = folded(asked.text) and r.state = 'APPLIED'
                          join imports i on i.id = r.import_id and i.kind = 'HISTORY'
                        where r.content is not null""")
                .param("asked", things.toArray(String[]::new))
                .query((row, n) ->
                        found.put(row.getString("asked"), new Before(row.getString("content"), row.getString("place"))))
                .list();
        return found;
    }

    private Map<String, List<Found>> find(String sql, Collection<String> asked) {
        Map<String, List<Found>> found = new HashMap<>();
        if (!asked.isEmpty()) {
            jdbc.sql(sql)
                    .param("asked", asked.toArray(String[]::new))
                    .query((row, n) -> found.computeIfAbsent(row.getString("asked"), key -> new java.util.ArrayList<>())
                            .add(new Found(
                                    row.getObject("id", UUID.class),
                                    row.getObject("site_id", UUID.class),
                                    row.getObject("commissioned_on", LocalDate.class),
                                    row.getObject("pump", UUID.class))))
                    .list();
        }
        return found;
    }
}
