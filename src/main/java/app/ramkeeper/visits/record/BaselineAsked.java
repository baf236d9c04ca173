package app.ramkeeper.visits.record;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.visits.PutToWork;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.form.TypedForm;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** Asks about a commissioning without the flows that later visits are compared with; who says so may go without. */
@Component
class BaselineAsked {

    static final String WITHOUT = "noBaseline";

    private final Fleet fleet;
    private final VisitHistory history;
    private final VisitChoices choices;

    BaselineAsked(Fleet fleet, VisitHistory history, VisitChoices choices) {
        this.fleet = fleet;
        this.history = history;
        this.choices = choices;
    }

    void ask(TypedForm form, RecordVisit command) {
        if (command.kind() != VisitKind.COMMISSIONING
                || command.outcome() != ReportOutcome.DONE
                || form.ticked(WITHOUT)) {
            return;
        }
        Set<InstallId> installs = installs(command);
        if (installs.isEmpty()) {
            form.problem(
                    WITHOUT,
                    "Nothing is read, so no pump counts as put to work and there is no baseline. Give its readings, or"
                            + " tick that you have none.");
        }
        List<String> lacks = new ArrayList<>();
        installs.stream()
                .sorted(Comparator.comparing(InstallId::value))
                .forEach(install -> Stream.of(Quantity.DELIVERED_FLOW, Quantity.DRIVE_FLOW)
                        .filter(quantity -> PutToWork.read(command, install, quantity) == null)
                        .forEach(quantity ->
                                lacks.add(choices.word("quantity", quantity).toLowerCase(Locale.ROOT) + " of "
                                        + fleet.install(install).name())));
        if (!lacks.isEmpty()) {
            form.problem(
                    WITHOUT,
                    "The baseline lacks what was not read: " + String.join(", ", lacks)
                            + ". Later visits have nothing to compare with. Give the readings, or tick that you have"
                            + " none.");
        }
    }

    /** A correction is of the install that the report was for. */
    private Set<InstallId> installs(RecordVisit command) {
        if (command.supersedes() == null) {
            return PutToWork.installs(command);
        }
        return history.report(command.supersedes())
                .map(ReportView::commissioned)
                .map(ReportView.Commissioned::install)
                .map(Set::of)
                .orElseGet(() -> PutToWork.installs(command));
    }
}
