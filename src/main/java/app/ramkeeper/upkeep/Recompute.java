package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.TaskTerms;
import app.ramkeeper.upkeep.TaskRow.Dates;
import app.ramkeeper.upkeep.rules.Idle;
import app.ramkeeper.upkeep.rules.Work;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Works out dates anew, in the transaction of whatever made it necessary; a batch at a time. */
@Service
@Transactional(propagation = Propagation.MANDATORY)
class Recompute {

    static final int BATCH = 4000;
    static final UUID FIRST = new UUID(0, 0);

    private final TaskStore tasks;
    private final History history;
    private final Catalogue catalogue;
    private final Clock clock;

    Recompute(TaskStore tasks, History history, Catalogue catalogue, Clock clock) {
        this.tasks = tasks;
        this.history = history;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    /** All tasks of these installs, from all reports: whatever came in, and in whatever order. */
    void installs(Collection<UUID> installs) {
        if (!installs.isEmpty()) {
            fromHistory(tasks.ofInstalls(installs), catalogue.terms(), catalogue.includers());
        }
    }

    /** All tasks of a kind, after a change of its terms; with history if what resets it changed. */
    void kind(UUID kind, boolean withHistory) {
        Map<UUID, TaskTerms> terms = catalogue.terms();
        Map<UUID, Set<UUID>> includers = catalogue.includers();
        UUID after = FIRST;
        List<TaskRow> rows = tasks.ofKindAfter(kind, after, BATCH);
        while (!rows.isEmpty()) {
            if (withHistory) {
                fromHistory(rows, terms, includers);
            } else {
                fromStored(rows, terms);
            }
            after = rows.get(rows.size() - 1).id();
            rows = rows.size() < BATCH ? List.of() : tasks.ofKindAfter(kind, after, BATCH);
        }
    }

    private void fromHistory(List<TaskRow> rows, Map<UUID, TaskTerms> terms, Map<UUID, Set<UUID>> includers) {
        Map<UUID, List<Idle>> idles = history.idles(installsOf(rows));
        Set<UUID> pumps =
                rows.stream().map(TaskRow::pump).filter(Objects::nonNull).collect(Collectors.toSet());
        List<History.Said> said = history.said(installsOf(rows), pumps);
        Map<UUID, List<History.Said>> byInstall = said.stream().collect(Collectors.groupingBy(History.Said::install));
        Map<UUID, List<History.Said>> byPump = said.stream()
                .filter(s -> s.pump() != null)
                .collect(Collectors.groupingBy(s -> Objects.requireNonNull(s.pump())));
        LocalDate today = LocalDate.now(clock);
        write(
                rows,
                row -> Dating.fromHistory(
                        row,
                        Objects.requireNonNull(terms.get(row.kind())),
                        works(row, byInstall, byPump, includers.getOrDefault(row.kind(), Set.of(row.kind()))),
                        idles.getOrDefault(row.install(), List.of()),
                        today));
    }

    private static List<Work> works(
            TaskRow row,
            Map<UUID, List<History.Said>> byInstall,
            Map<UUID, List<History.Said>> byPump,
            Set<UUID> includers) {
        Set<History.Said> near = new HashSet<>(byInstall.getOrDefault(row.install(), List.of()));
        if (row.pump() != null) {
            near.addAll(byPump.getOrDefault(row.pump(), List.of()));
        }
        return near.stream()
                .filter(said -> said.speaksOf(row, includers))
                .map(History.Said::work)
                .toList();
    }

    private void fromStored(List<TaskRow> rows, Map<UUID, TaskTerms> terms) {
        Map<UUID, List<Idle>> idles = history.idles(installsOf(rows));
        LocalDate today = LocalDate.now(clock);
        write(
                rows,
                row -> Dating.fromStored(
                        row,
                        Objects.requireNonNull(terms.get(row.kind())),
                        idles.getOrDefault(row.install(), List.of()),
                        today));
    }

    private void write(List<TaskRow> rows, java.util.function.Function<TaskRow, Dates> rule) {
        Map<UUID, Dates> changed = new LinkedHashMap<>();
        for (TaskRow row : rows) {
            Dates dates = rule.apply(row);
            if (!dates.equals(row.dates())) {
                changed.put(row.id(), dates);
            }
        }
        tasks.write(changed);
    }

    private static Set<UUID> installsOf(List<TaskRow> rows) {
        return rows.stream().map(TaskRow::install).collect(Collectors.toSet());
    }
}
