package app.ramkeeper.visits.record;

import app.ramkeeper.fleet.BaselineDetails;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.AsWritten;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.WaterRecords;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** A report as it was recorded, in force or not. */
@Controller
@ForField
class ReportPages {

    private final VisitHistory history;
    private final WaterRecords water;
    private final AsWritten written;
    private final Fleet fleet;

    ReportPages(VisitHistory history, WaterRecords water, AsWritten written, Fleet fleet) {
        this.history = history;
        this.water = water;
        this.written = written;
        this.fleet = fleet;
    }

    /** A baseline that the report's readings became, with the first day of its configuration. */
    public record BaselineOf(String installName, @Nullable LocalDate from) {}

    @GetMapping("/visits/reports/{id}")
    String report(@PathVariable UUID id, Model model) {
        ReportView report = history.report(new ReportId(id)).orElseThrow(() -> new Missing("report", id));
        model.addAttribute("report", report);
        model.addAttribute("water", water.of(report.id()).orElse(null));
        model.addAttribute("written", written.of(report.id()).orElse(null));
        boolean commissioned = report.kind() == VisitKind.COMMISSIONING
                && report.outcome() == ReportOutcome.DONE
                && report.supersededBy() == null;
        model.addAttribute("baselines", commissioned ? baselines(report) : null);
        return "visits/report";
    }

    private List<BaselineOf> baselines(ReportView report) {
        return history.installsIn(report.id()).stream()
                .map(fleet::install)
                .flatMap(install -> fleet.configurations(install.id()).stream()
                        .filter(c -> of(c.baseline(), report))
                        .map(c -> new BaselineOf(install.name(), c.from())))
                .toList();
    }

    private static boolean of(@Nullable BaselineDetails baseline, ReportView report) {
        return baseline != null && report.id().value().equals(baseline.report());
    }
}
