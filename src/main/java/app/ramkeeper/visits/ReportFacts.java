package app.ramkeeper.visits;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Looks up what a report speaks of: which of the things it names exist, and what is known of its installs. */
@Repository
class ReportFacts {

    private final JdbcClient jdbc;

    ReportFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What is known of an install. */
    record Install(UUID site, String name, @Nullable LocalDate commissionedOn, boolean commissioningKnown) {}

    /**
     * The things a report names that are there.
     *
     * @param before installs that the corrected report speaks of: they stood at its site, wherever they stand now
     */
    record Known(
            boolean site, Map<UUID, Install> installs, Set<InstallId> before, Set<UUID> things, Set<String> photos) {}

    /** The site where a site stands by now: the one it was merged into, else itself. */
    SiteId standing(SiteId site) {
        return jdbc.sql("select coalesce(merged_into, id) from sites where id = :id")
                .param("id", site.value())
                .query(UUID.class)
                .optional()
                .map(SiteId::new)
                .orElse(site);
    }

    Known of(RecordVisit c) {
        return new Known(
                exists(
                                "select id from sites where id = any(:ids)",
                                Set.of(c.site().value()))
                        .contains(c.site().value()),
                installs(installs(c)),
                c.supersedes() == null ? Set.of() : installsIn(c.supersedes()),
                things(c),
                photos(c));
    }

    /** The installs that a recorded report speaks of. */
    Set<InstallId> installsIn(ReportId report) {
        return jdbc.sql("""
                        select install_id from report_works where report_id = :id
                        union select install_id from readings where report_id = :id
                        union select install_id from findings where report_id = :id and install_id is not null
                        union select install_id from parts_used where report_id = :id
                        union select commissioned_install_id from visit_reports where id = :id and commissioned_install_id is not null""").param("id", report.value()).query(UUID.class).set().stream()
                .map(InstallId::new)
                .collect(Collectors.toSet());
    }

    private static Set<UUID> installs(RecordVisit c) {
        return Stream.of(
                        c.works().stream().map(RecordVisit.Work::install),
                        c.readings().stream().map(RecordVisit.Reading::install),
                        c.findings().stream().map(RecordVisit.Finding::install),
                        c.parts().stream().map(RecordVisit.PartUsed::install),
                        Stream.ofNullable(c.commissioned()).map(RecordVisit.Commissioned::install))
                .flatMap(s -> s)
                .filter(Objects::nonNull)
                .map(InstallId::value)
                .collect(Collectors.toSet());
    }

    private Map<UUID, Install> installs(Set<UUID> ids) {
        Map<UUID, Install> found = new HashMap<>();
        if (!ids.isEmpty()) {
            jdbc.sql(
                            "select id, site_id, name, commissioned_on, commissioning_known from installs where id = any(:ids)")
                    .param("ids", ids.toArray(UUID[]::new))
                    .query((row, n) -> found.put(
                            row.getObject("id", UUID.class),
                            new Install(
                                    row.getObject("site_id", UUID.class),
                                    row.getString("name"),
                                    row.getObject("commissioned_on", LocalDate.class),
                                    row.getBoolean("commissioning_known"))))
                    .list();
        }
        return found;
    }

    private Set<UUID> things(RecordVisit c) {
        Set<UUID> asked = new HashSet<>();
        c.people().forEach(p -> asked.add(p.value()));
        c.works().forEach(w -> {
            asked.add(w.kind().value());
            add(asked, w.pump() == null ? null : w.pump().value());
        });
        c.readings().forEach(r -> {
            add(asked, r.pump() == null ? null : r.pump().value());
            add(asked, r.instrument());
        });
        c.parts().forEach(p -> {
            add(asked, p.part() == null ? null : p.part().value());
            add(asked, p.pump() == null ? null : p.pump().value());
        });
        return exists("""
                select id from people where id = any(:ids) union all select id from task_kinds where id = any(:ids)
                union all select id from pumps where id = any(:ids) union all select id from parts where id = any(:ids)
                union all select id from instruments where id = any(:ids)""", asked);
    }

    private static void add(Set<UUID> ids, @Nullable UUID id) {
        if (id != null) {
            ids.add(id);
        }
    }

    private Set<UUID> exists(String sql, Collection<UUID> ids) {
        return ids.isEmpty()
                ? Set.of()
                : jdbc.sql(sql)
                        .param("ids", ids.toArray(UUID[]::new))
                        .query(UUID.class)
                        .set();
    }

    private Set<String> photos(RecordVisit c) {
        byte[][] keys = c.photos().stream()
                .map(RecordVisit.Photo::sha256)
                .filter(sha -> sha.matches("[0-9a-f]{64}"))
                .map(HexFormat.of()::parseHex)
                .toArray(byte[][]::new);
        return keys.length == 0
                ? Set.of()
                : jdbc.sql("select encode(sha256, 'hex') from files where sha256 = any(:keys)")
                        .param("keys", keys)
                        .query(String.class)
                        .set();
    }
}
