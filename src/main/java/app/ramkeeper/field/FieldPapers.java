package app.ramkeeper.field;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.PartyCard;
import app.ramkeeper.fleet.SitePart;
import app.ramkeeper.identity.Company;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.upkeep.DueTask;
import app.ramkeeper.upkeep.Upkeep;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.WaterRecords;
import app.ramkeeper.web.print.Pdf;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Papers after a visit: the customer's page, the commissioning record with the hand-over sheet. */
@Controller
@ForField
class FieldPapers {

    private static final int NEXT_DUE = 8;

    private final VisitHistory visits;
    private final Fleet fleet;
    private final Upkeep upkeep;
    private final Checklists checklists;
    private final WaterRecords water;
    private final Company company;
    private final SentVisits sent;
    private final CommissioningFacts facts;
    private final Pdf pdf;

    FieldPapers(
            VisitHistory visits,
            Fleet fleet,
            Upkeep upkeep,
            Checklists checklists,
            WaterRecords water,
            Company company,
            SentVisits sent,
            CommissioningFacts facts,
            Pdf pdf) {
        this.visits = visits;
        this.fleet = fleet;
        this.upkeep = upkeep;
        this.checklists = checklists;
        this.water = water;
        this.company = company;
        this.sent = sent;
        this.facts = facts;
        this.pdf = pdf;
    }

    @GetMapping("/visits/reports/{id}/customer.pdf")
    ResponseEntity<byte[]> customer(@PathVariable UUID id) {
        ReportView report = report(id);
        Map<String, Object> model = model(report);
        model.put(
                "promised",
                report.followUps().stream()
                        .filter(ReportView.FollowUp::promised)
                        .toList());
        model.put("due", nextDue(report));
        model.put("water", water.of(report.id()).orElse(null));
        model.put("places", Places.of(report));
        return paper("field/customer-paper", model, "visit " + report.siteName() + " " + report.on());
    }

    private List<DueTask> nextDue(ReportView report) {
        return upkeep.tasksAt(report.site()).stream()
                .filter(task -> task.dueOn() != null && task.dueOn().isAfter(report.on()))
                .sorted(Comparator.comparing(task -> String.valueOf(task.dueOn())))
                .limit(NEXT_DUE)
                .toList();
    }

    /** A step with its answer. */
    public record Answered(Checklists.Item item, PhoneVisit.@Nullable CheckItem answer) {}

    @GetMapping("/visits/reports/{id}/commissioning.pdf")
    ResponseEntity<byte[]> commissioning(@PathVariable UUID id) {
        ReportView report = report(id);
        if (report.kind() != VisitKind.COMMISSIONING) {
            throw new Missing("commissioning record", id);
        }
        Map<String, Object> model = model(report);
        Optional<PhoneVisit> sent = this.sent.of(report.id());
        Optional<Checklists.Edition> list = sent.map(PhoneVisit::checklist).flatMap(checklists::edition);
        model.put("list", list.orElse(null));
        model.put("answers", list.map(l -> answered(l, sent.orElseThrow())).orElse(List.of()));
        model.put("steps", sent.map(facts::tried).orElse(List.of()));
        model.put("dryFlow", sent.map(PhoneVisit::dryFlow).map(facts::spelled).orElse(null));
        model.put(
                "best", sent.flatMap(Settings::bestOfDryMonth).map(facts::tried).orElse(null));
        model.put("left", sent.map(PhoneVisit::leftSetting).orElse(null));
        model.put("plot", sent.flatMap(SettingsPlot::of).orElse(null));
        model.put("dryFrom", sent.map(PhoneVisit::dryFrom).orElse(null));
        model.put("dryUntil", sent.map(PhoneVisit::dryUntil).orElse(null));
        model.put("installs", facts.of(report, sent));
        return paper("field/commissioning-paper", model, "commissioning " + report.siteName() + " " + report.on());
    }

    private static List<Answered> answered(Checklists.Edition list, PhoneVisit visit) {
        Map<String, PhoneVisit.CheckItem> answers = Checklists.answers(visit);
        List<Answered> all = new ArrayList<>();
        list.items().forEach(item -> all.add(new Answered(item, answers.get(item.code()))));
        return all;
    }

    private ReportView report(UUID id) {
        return visits.report(new ReportId(id)).orElseThrow(() -> new Missing("report", id));
    }

    private Map<String, Object> model(ReportView report) {
        Map<String, Object> model = new HashMap<>();
        model.put("report", report);
        model.put("company", company.card());
        model.put("customer", customer(report));
        model.put("inForce", inForce(report));
        return model;
    }

    /** Whose works they are, else who pays; one who has gone since is no longer named. */
    private String customer(ReportView report) {
        List<PartyCard> parties = fleet.site(report.site()).parties();
        return Stream.of(SitePart.OWNER, SitePart.PAYER, SitePart.OCCUPIER)
                .map(part -> parties.stream()
                        .filter(p -> p.part() == part)
                        .map(PartyCard::name)
                        .distinct()
                        .collect(Collectors.joining(", ")))
                .filter(names -> !names.isEmpty())
                .findFirst()
                .orElse("");
    }

    /** The report that counts in place of a replaced one; the report itself while it is in force. */
    private ReportView inForce(ReportView report) {
        ReportView last = report;
        for (ReportId next = last.supersededBy(); next != null; next = last.supersededBy()) {
            last = report(next.value());
        }
        return last;
    }

    private ResponseEntity<byte[]> paper(String template, Map<String, Object> model, String name) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline()
                                .filename(
                                        name.replaceAll("[^\\p{L}\\p{N} .-]", " ") + ".pdf",
                                        java.nio.charset.StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .body(pdf.make(template, model));
    }
}
