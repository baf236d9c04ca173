package app.ramkeeper.visits.record;

import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.WorkOutcome;
import app.ramkeeper.visits.form.TypedForm;

/** Asks about a visit that is said to be done although the report says nothing, or that a task could not be; who ticks that it is so is believed. */
final class MeantSo {

    static final String TICK = "meantSo";

    private MeantSo() {}

    static void ask(TypedForm form, RecordVisit command) {
        if (command.supersedes() != null || command.outcome() != ReportOutcome.DONE || form.ticked(TICK)) {
            return;
        }
        if (command.kind() != VisitKind.COMMISSIONING && saysNothing(command)) {
            form.problem(
                    TICK,
                    "Nothing is put down: no task, reading, finding, part, photo or note. Say what was done there, or tick"
                            + " that it is to be recorded so.");
        } else if (command.works().stream()
                .anyMatch(work -> work.outcome() == WorkOutcome.COULD_NOT && work.by() == DoneBy.US)) {
            form.problem(
                    TICK,
                    "A task could not be done, but the visit as a whole is said to be done. Say “partly” above, or tick that"
                            + " it is to be recorded so.");
        }
    }

    private static boolean saysNothing(RecordVisit command) {
        return command.works().isEmpty()
                && command.readings().isEmpty()
                && command.findings().isEmpty()
                && command.parts().isEmpty()
                && command.followUps().isEmpty()
                && command.photos().isEmpty()
                && command.note() == null;
    }
}
