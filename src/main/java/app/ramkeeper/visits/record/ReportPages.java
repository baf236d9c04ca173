package app.ramkeeper.visits.record;

import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.WaterRecords;
import java.util.UUID;
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

    ReportPages(VisitHistory history, WaterRecords water) {
        this.history = history;
        this.water = water;
    }

    @GetMapping("/visits/reports/{id}")
    String report(@PathVariable UUID id, Model model) {
        model.addAttribute("report", history.report(new ReportId(id)).orElseThrow(() -> new Missing("report", id)));
        model.addAttribute("water", water.of(new ReportId(id)).orElse(null));
        return "visits/report";
    }
}
