package app.ramkeeper.visits.record;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.WorkOutcome;
import app.ramkeeper.visits.form.TypedForm;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which part went in at each task that was done: what the form says, and a question where it says nothing. It is asked
 * once; who saves again without an answer is let through, and the task says so.
 */
final class PartsAsked {

    private static final String PUT_BACK = "No part went in: the old one was put back.";
    private static final String NOT_KNOWN = "Which part went in is not known.";
    private static final String NOT_NAMED = "No part named.";

    private final TypedForm form;
    private final TaskParts parts;
    private final UUID person;

    PartsAsked(TypedForm form, TaskParts parts, UUID person) {
        this.form = form;
        this.parts = parts;
        this.person = person;
    }

    /** Adds the parts that the tasks name; lists of tasks and parts each with the prefixes of their fields. */
    void answer(
            List<RecordVisit.Work> works,
            List<String> fields,
            List<RecordVisit.PartUsed> used,
            List<String> names,
            LocalDate on) {
        Map<Integer, List<TaskParts.Fit>> fits = new TreeMap<>();
        for (int i = 0; i < works.size(); i++) {
            RecordVisit.Work work = works.get(i);
            if (work.outcome() == WorkOutcome.DONE
                    && work.by() == DoneBy.US
                    && parts.asks(work.kind().value())) {
                fits.put(i, parts.of(task(work, on)));
            }
        }
        List<RecordVisit.PartUsed> byHand = List.copyOf(used);
        fits.forEach((i, list) -> chosen(fields.get(i), list).stream()
                .filter(fit -> byHand.stream().noneMatch(other -> at(works.get(i), other) && fits(other, fit)))
                .map(fit -> part(works.get(i), fit))
                .filter(part -> used.stream().noneMatch(other -> samePlace(part, other)))
                .forEach(part -> {
                    used.add(part);
                    names.add(fields.get(i) + ".part");
                }));
        fits.forEach((i, list) -> works.set(i, noted(works.get(i), fields.get(i), named(works.get(i), list, used))));
    }

    private TaskParts.Task task(RecordVisit.Work work, LocalDate on) {
        return new TaskParts.Task(
                work.kind().value(),
                work.install().value(),
                work.pump() == null ? null : work.pump().value(),
                on,
                person);
    }

    /** Two tasks that ask for the same part in the same place, such as a rubber and an overhaul, took one. */
    private static boolean samePlace(RecordVisit.PartUsed a, RecordVisit.PartUsed b) {
        return a.position() != null
                && a.position() == b.position()
                && a.install().equals(b.install())
                && Objects.equals(a.pump(), b.pump())
                && Objects.equals(a.part(), b.part());
    }

    private List<TaskParts.Fit> chosen(String field, List<TaskParts.Fit> fits) {
        String said = form.value(field + ".part");
        if (said.equals(TaskParts.ALL) && TaskParts.together(fits)) {
            return fits;
        }
        return fits.stream()
                .filter(fit -> fit.part().toString().equals(said))
                .limit(1)
                .toList();
    }

    private static RecordVisit.PartUsed part(RecordVisit.Work work, TaskParts.Fit fit) {
        return new RecordVisit.PartUsed(
                work.install(), work.pump(), new PartId(fit.part()), null, fit.place(), fit.quantity(), fit.batch());
    }

    /** A part at the same pump that the task asks for, in its place where that is said, or words. */
    private static boolean named(RecordVisit.Work work, List<TaskParts.Fit> fits, List<RecordVisit.PartUsed> used) {
        return used.stream()
                .filter(part -> at(work, part))
                .anyMatch(part -> part.part() == null || fits.stream().anyMatch(fit -> fits(part, fit)));
    }

    private static boolean at(RecordVisit.Work work, RecordVisit.PartUsed part) {
        return part.install().equals(work.install())
                && (part.pump() == null || work.pump() == null || part.pump().equals(work.pump()));
    }

    private static boolean fits(RecordVisit.PartUsed part, TaskParts.Fit fit) {
        return part.part() != null
                && fit.part().equals(part.part().value())
                && (part.position() == null || part.position() == fit.place());
    }

    /** Makes an answer again of what a report says of it in words, which nobody typed. */
    static void restore(TypedForm form, String field) {
        String note = form.value(field + ".note");
        form.set(
                field + ".part",
                note.contains(PUT_BACK) ? TaskParts.OLD : note.contains(NOT_KNOWN) ? TaskParts.UNKNOWN : null);
        form.set(field + ".partAsked", note.contains(NOT_NAMED) ? "true" : null);
        form.set(field + ".note", plain(note));
    }

    /**
     * What goes along with the task in words; asks where nothing is said of a task that is the change of a part. Of an
     * inspection a part may go in or not. A correction says what the report said.
     */
    private @Nullable String words(RecordVisit.Work work, String field, boolean named) {
        String said = form.value(field + ".part");
        if (said.equals(TaskParts.OLD)) {
            return PUT_BACK;
        }
        if (said.equals(TaskParts.UNKNOWN)) {
            return NOT_KNOWN;
        }
        if (!said.isEmpty() && !named) {
            form.problem(field + ".part", "Choose one from the list.");
        }
        if (!said.isEmpty() || named || !parts.changes(work.kind().value())) {
            return null;
        }
        if (!form.value("supersedes").isEmpty()) {
            return form.ticked(field + ".partAsked") ? NOT_NAMED : null;
        }
        if (!form.ticked(field + ".partAsked")) {
            form.set(field + ".partAsked", "true");
            form.problem(
                    field + ".part",
                    "No part is named, so nothing leaves the van’s stock and no batch is kept. Which part went in? Without"
                            + " an answer, save again.");
        }
        return NOT_NAMED;
    }

    private RecordVisit.Work noted(RecordVisit.Work work, String field, boolean named) {
        String words = words(work, field, named);
        if (words == null && !named) {
            return work;
        }
        String note = plain(work.note());
        return new RecordVisit.Work(
                work.install(),
                work.pump(),
                work.kind(),
                work.task(),
                work.outcome(),
                work.reason(),
                work.lookAgainOn(),
                work.by(),
                work.about(),
                note == null ? words : words == null ? note : note + ". " + words);
    }

    /** Without what an earlier answer said; a correction brings it along. */
    private static @Nullable String plain(@Nullable String note) {
        String left = note == null ? "" : note;
        for (String said : List.of(PUT_BACK, NOT_KNOWN, NOT_NAMED)) {
            left = left.replace(". " + said, "").replace(said, "");
        }
        return left.isBlank() ? null : left.strip();
    }
}
