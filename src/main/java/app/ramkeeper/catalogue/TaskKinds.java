package app.ramkeeper.catalogue;

import app.ramkeeper.identity.ForAdministrator;
import app.ramkeeper.shared.Missing;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps the kinds of task; every change of terms moves due dates in the same transaction. */
@Service
@ForAdministrator
@Transactional
public class TaskKinds {

    private final TaskKindRepository kinds;
    private final TaskTermsQuery terms;
    private final ApplicationEventPublisher events;
    private final ObjectProvider<WhatMoves> whatMoves;
    private final Clock clock;

    TaskKinds(
            TaskKindRepository kinds,
            TaskTermsQuery terms,
            ApplicationEventPublisher events,
            ObjectProvider<WhatMoves> whatMoves,
            Clock clock) {
        this.kinds = kinds;
        this.terms = terms;
        this.events = events;
        this.whatMoves = whatMoves;
        this.clock = clock;
    }

    /** Adds a kind; its code comes from its name. */
    public TaskKindId add(TaskKindForm form) {
        TaskKindId id = TaskKindId.next();
        kinds.saveAndFlush(new TaskKind(id, freeCode(String.valueOf(form.name())), form));
        events.publishEvent(new TaskKindChanged(id, true, true));
        return id;
    }

    /** Changes a kind. */
    public void change(TaskKindId id, TaskKindForm form) {
        TaskKind kind = find(id);
        TaskTerms before = kind.terms();
        Set<UUID> included = kind.includes();
        Set<TaskKind.PartNeed> parts = kind.parts();
        Map<UUID, Set<UUID>> includersBefore = terms.includers();
        kind.change(form);
        kinds.saveAndFlush(kind);
        boolean partsChanged = !parts.equals(kind.parts());
        if (partsChanged || !before.equals(kind.terms())) {
            boolean who = before.drinkingWater() != kind.terms().drinkingWater();
            events.publishEvent(new TaskKindChanged(id, who, partsChanged));
        }
        if (!included.equals(kind.includes())) {
            includersChanged(includersBefore, terms.includers());
        }
    }

    private void includersChanged(Map<UUID, Set<UUID>> before, Map<UUID, Set<UUID>> after) {
        after.forEach((kind, includers) -> {
            if (!includers.equals(before.get(kind))) {
                events.publishEvent(new TaskKindChanged(new TaskKindId(kind), false, true));
            }
        });
    }

    /** Takes a kind out of use: its tasks end; what was agreed about them stays for when it is brought back. */
    public void withdraw(TaskKindId id) {
        set(id, LocalDate.now(clock));
    }

    public void bringBack(TaskKindId id) {
        set(id, null);
    }

    private void set(TaskKindId id, @org.jspecify.annotations.Nullable LocalDate withdrawnOn) {
        TaskKind kind = find(id);
        kind.withdraw(withdrawnOn);
        kinds.saveAndFlush(kind);
        events.publishEvent(new TaskKindChanged(id, true, true));
    }

    /** What a change would move, without making it. */
    @Transactional(readOnly = true)
    public Moves preview(TaskKindId id, TaskKindForm form) {
        TaskKind kind = find(id);
        TaskTerms before = kind.terms();
        TaskKind changed = new TaskKind(id, kind.code(), form.withVersion(null));
        TaskTerms after = changed.terms();
        WhatMoves answer = whatMoves.getIfAvailable();
        return answer == null || before.equals(after) ? Moves.NOTHING : answer.preview(after);
    }

    @Transactional(readOnly = true)
    public TaskKindForm form(TaskKindId id) {
        return TaskKindForms.of(find(id));
    }

    @Transactional(readOnly = true)
    public List<TaskKindLine> list() {
        return kinds.listed().stream().map(TaskKindLine::of).toList();
    }

    /** True if another kind has this name already. */
    @Transactional(readOnly = true)
    public boolean nameTaken(String name, UUID except) {
        return kinds.nameTaken(name, except);
    }

    /** True if including these would make the kind include itself. */
    @Transactional(readOnly = true)
    public boolean goesRound(UUID id, List<UUID> includes) {
        Set<UUID> includers = new HashSet<>(terms.includers().getOrDefault(id, Set.of()));
        includers.add(id);
        return includes.stream().anyMatch(includers::contains);
    }

    @Transactional(readOnly = true)
    public boolean exist(List<UUID> ids) {
        return kinds.findAllById(ids).size() == ids.size();
    }

    private TaskKind find(TaskKindId id) {
        return kinds.findById(id.value()).orElseThrow(() -> new Missing("task kind", id));
    }

    private String freeCode(String name) {
        String plain = java.text.Normalizer.normalize(name, java.text.Normalizer.Form.NFD)
                .toUpperCase(Locale.ROOT)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^A-Z0-9]+", "_")
                .replaceAll("^[_0-9]+|_+$", "");
        String base = plain.length() < 2 ? "KIND_" + plain : plain.substring(0, Math.min(36, plain.length()));
        String code = base;
        for (int i = 2; kinds.existsByCode(code); i++) {
            code = base + "_" + i;
        }
        return code;
    }
}
