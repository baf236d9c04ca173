package app.ramkeeper.upkeep;

import app.ramkeeper.catalogue.Moves;
import app.ramkeeper.catalogue.TaskTerms;
import app.ramkeeper.catalogue.WhatMoves;
import app.ramkeeper.upkeep.TaskRow.Dates;
import app.ramkeeper.upkeep.rules.Idle;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Puts every task of a kind through the rules under changed terms, and counts what moves; writes nothing. */
@Service
class IntervalPreview implements WhatMoves {

    private final TaskStore tasks;
    private final History history;
    private final Clock clock;

    IntervalPreview(TaskStore tasks, History history, Clock clock) {
        this.tasks = tasks;
        this.history = history;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Moves preview(TaskTerms changed) {
        Count count = new Count(LocalDate.now(clock));
        UUID kind = changed.id().value();
        List<TaskRow> rows = tasks.peekOfKindAfter(kind, Recompute.FIRST, Recompute.BATCH);
        while (!rows.isEmpty()) {
            Map<UUID, List<Idle>> idles =
                    history.idles(rows.stream().map(TaskRow::install).collect(Collectors.toSet()));
            rows.forEach(row -> count.add(
                    row.dates(),
                    Dating.fromStored(row, changed, idles.getOrDefault(row.install(), List.of()), count.today)));
            rows = rows.size() < Recompute.BATCH
                    ? List.of()
                    : tasks.peekOfKindAfter(kind, rows.get(rows.size() - 1).id(), Recompute.BATCH);
        }
        return count.result();
    }

    private static final class Count {

        private final LocalDate today;
        private long all;
        private long windows;
        private long overdueBefore;
        private long overdueAfter;
        private long[] moved = new long[64];
        private int size;

        Count(LocalDate today) {
            this.today = today;
        }

        void add(Dates before, Dates after) {
            all++;
            overdueBefore += overdue(before.windowUntil());
            overdueAfter += overdue(after.windowUntil());
            if (before.dueOn() != null
                    && after.dueOn() != null
                    && !before.dueOn().equals(after.dueOn())) {
                keep(ChronoUnit.DAYS.between(before.dueOn(), after.dueOn()));
            } else if (!Objects.equals(before.windowFrom(), after.windowFrom())
                    || !Objects.equals(before.windowUntil(), after.windowUntil())) {
                windows++;
            }
        }

        private int overdue(@Nullable LocalDate until) {
            return until != null && until.isBefore(today) ? 1 : 0;
        }

        private void keep(long days) {
            if (size == moved.length) {
                moved = Arrays.copyOf(moved, 2 * size);
            }
            moved[size++] = days;
        }

        Moves result() {
            long[] sorted = Arrays.copyOf(moved, size);
            Arrays.sort(sorted);
            long earlier = Arrays.stream(sorted).filter(days -> days < 0).count();
            long most = Arrays.stream(sorted).map(Math::abs).max().orElse(0);
            long middle = size == 0 ? 0 : sorted[size / 2];
            return new Moves(all, earlier, size - earlier, most, middle, windows, overdueBefore, overdueAfter);
        }
    }
}
