package app.ramkeeper.visits.record;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.WorkOutcome;
import app.ramkeeper.visits.form.TypedForm;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which part went in at each task that was done: what the form says, and a question where it says nothing. It is asked
 * once; who saves again without an answer is let through, and the task says so.
 */
final class PartsAsked {

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
        List<RecordVisit.PartUsed> byHand = List.copyOf(used);
        for (int i = 0; i < works.size(); i++) {
            RecordVisit.Work work = works.get(i);
            UUID kind = work.kind().value();
            if (work.outcome() == WorkOutcome.DONE && work.by() == DoneBy.US && parts.asks(kind)) {
                List<TaskParts.Fit> fits = parts.of(new TaskParts.Task(
                        kind,
                        work.install().value(),
                        work.pump() == null ? null : work.pump().value(),
                        on,
                        person));
                String field = fields.get(i);
                List<TaskParts.Fit> chosen = chosen(field, fits);
                chosen.forEach(fit -> {
                    used.add(part(work, fit));
                    names.add(field + ".part");
                });
                works.set(i, noted(work, words(field, !chosen.isEmpty() || named(work, fits, byHand))));
            }
        }
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

    /** A part put down by hand at the install: one that the task asks for, or words. */
    private static boolean named(RecordVisit.Work work, List<TaskParts.Fit> fits, List<RecordVisit.PartUsed> byHand) {
        return byHand.stream()
                .filter(part -> part.install().equals(work.install()))
                .anyMatch(part -> part.part() == null
                        || fits.stream()
                                .anyMatch(fit -> fit.part().equals(part.part().value())));
    }

    /** What goes along with the task in words; asks where nothing is said. A correction says what the report said. */
    private @Nullable String words(String field, boolean named) {
        String said = form.value(field + ".part");
        if (said.equals(TaskParts.OLD)) {
            return "No part went in: the old one was put back.";
        }
        if (said.equals(TaskParts.UNKNOWN)) {
            return "Which part went in is not known.";
        }
        if (!said.isEmpty() && !named) {
            form.problem(field + ".part", "Choose one from the list.");
        }
        if (!said.isEmpty() || named || !form.value("supersedes").isEmpty()) {
            return null;
        }
        if (!form.ticked(field + ".partAsked")) {
            form.set(field + ".partAsked", "true");
            form.problem(
                    field + ".part",
                    "No part is named, so nothing leaves the van’s stock and no batch is kept. Which part went in? Without"
                            + " an answer, save again.");
        }
        return "No part named.";
    }

    private static RecordVisit.Work noted(RecordVisit.Work work, @Nullable String words) {
        String note = work.note();
        if (words == null || (note != null && note.contains(words))) {
            return work;
        }
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
                note == null ? words : note + ". " + words);
    }
}
