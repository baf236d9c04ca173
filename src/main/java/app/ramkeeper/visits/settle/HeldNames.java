package app.ramkeeper.visits.settle;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.visits.RecordVisit;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The names behind the ids of reports that wait, in one statement. */
@Repository
class HeldNames {

    private final JdbcClient jdbc;

    HeldNames(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Names by id; an id that names nothing any more reads as itself. */
    public record Names(Map<UUID, String> known) {

        public String of(@Nullable UUID id) {
            return id == null ? "" : known.getOrDefault(id, id.toString());
        }
    }

    private static void add(Set<UUID> ids, @Nullable InstallId install) {
        if (install != null) {
            ids.add(install.value());
        }
    }

    Names of(Collection<RecordVisit> reports) {
        Set<UUID> ids = new HashSet<>();
        for (RecordVisit report : reports) {
            ids.add(report.site().value());
            report.people().forEach(person -> ids.add(person.value()));
            report.works()
                    .forEach(work -> ids.addAll(
                            List.of(work.install().value(), work.kind().value())));
            report.readings().forEach(reading -> ids.add(reading.install().value()));
            add(
                    ids,
                    report.commissioned() == null ? null : report.commissioned().install());
            report.findings().forEach(finding -> add(ids, finding.install()));
            report.parts().forEach(part -> {
                ids.add(part.install().value());
                if (part.part() != null) {
                    ids.add(part.part().value());
                }
            });
        }
        if (ids.isEmpty()) {
            return new Names(Map.of());
        }
        return new Names(jdbc
                .sql("""
                        select id, name from sites where id in (:ids) union all select id, name from people where id in (:ids)
                        union all select id, name from installs where id in (:ids) union all select id, name from task_kinds where id in (:ids)
                        union all select id, number || ' ' || name from parts where id in (:ids)""")
                .param("ids", ids)
                .query((row, n) -> Map.entry(row.getObject("id", UUID.class), row.getString("name")))
                .list()
                .stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (one, other) -> one)));
    }
}
