package app.ramkeeper.rounds.web;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.rounds.out.Publishing;
import app.ramkeeper.rounds.out.RunSheets;
import app.ramkeeper.rounds.out.Shopping;
import app.ramkeeper.rounds.week.TechDay;
import app.ramkeeper.rounds.week.Times;
import app.ramkeeper.rounds.week.Week;
import app.ramkeeper.rounds.week.WeekEdits.By;
import app.ramkeeper.rounds.week.WeekStore;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.web.CsvDownload;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.print.Pdf;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What leaves the plan: publishing it, run sheets, tracks, and the parts to load and to buy. */
@Controller
@ForOffice
class OutPages {

    private final WeekStore weeks;
    private final Publishing publishing;
    private final RunSheets sheets;
    private final Mondays mondays;
    private final Pdf pdf;

    OutPages(WeekStore weeks, Publishing publishing, RunSheets sheets, Mondays mondays, Pdf pdf) {
        this.weeks = weeks;
        this.publishing = publishing;
        this.sheets = sheets;
        this.mondays = mondays;
        this.pdf = pdf;
    }

    @PostMapping("/rounds/{monday}/publish")
    String publish(By by, RedirectAttributes flash) {
        flash.addFlashAttribute("saved", Saved.said(publishing.publish(by)));
        return WeekPages.back(by.monday());
    }

    @GetMapping("/rounds/{monday}/sheets/{person}/{day}")
    String sheet(@PathVariable LocalDate monday, @PathVariable UUID person, @PathVariable LocalDate day, Model model) {
        model.addAllAttributes(sheetOf(monday, person, day));
        return "rounds/sheet";
    }

    @GetMapping("/rounds/{monday}/sheets/{person}/{day}/sheet.pdf")
    ResponseEntity<byte[]> sheetPaper(
            @PathVariable LocalDate monday, @PathVariable UUID person, @PathVariable LocalDate day) {
        return download(
                pdf.make("rounds/sheet-paper", sheetOf(monday, person, day)),
                MediaType.APPLICATION_PDF,
                "run-sheet-" + day + ".pdf");
    }

    @GetMapping("/rounds/{monday}/sheets/{person}/{day}/round.gpx")
    ResponseEntity<byte[]> track(
            @PathVariable LocalDate monday, @PathVariable UUID person, @PathVariable LocalDate day) {
        Week week = weeks.load(mondays.known(monday));
        return download(
                sheets.track(week, round(week, person, day)),
                MediaType.parseMediaType("application/gpx+xml"),
                "round-" + day + ".gpx");
    }

    @GetMapping("/rounds/{monday}/parts")
    String parts(@PathVariable LocalDate monday, Model model) {
        Week week = weeks.load(mondays.known(monday));
        List<Shopping.Van> vans = vans(week);
        model.addAttribute("monday", monday);
        model.addAttribute("vans", vans);
        model.addAttribute("shopping", Shopping.of(vans));
        model.addAttribute(
                "works",
                week.stops().stream()
                        .filter(stop -> stop.placed() && stop.kind().equals("INSTALLATION"))
                        .map(stop -> week.drive().rules().works(stop))
                        .filter(Objects::nonNull)
                        .toList());
        return "rounds/parts";
    }

    @GetMapping("/rounds/{monday}/parts.csv")
    ResponseEntity<StreamingResponseBody> shopping(@PathVariable LocalDate monday) {
        return CsvDownload.of(
                "parts-" + monday + ".csv",
                List.of("Part", "Number", "Unit", "Needed", "In the vans", "From the depots", "To buy"),
                Shopping.of(vans(weeks.load(mondays.known(monday)))).stream()
                        .map(i -> List.of(
                                i.part(), i.number(), i.unit(), i.needed(), i.inVans(), i.fromDepots(), i.toBuy())));
    }

    private List<Shopping.Van> vans(Week week) {
        Map<UUID, List<TechDay>> byPerson = new LinkedHashMap<>();
        week.rounds()
                .forEach(r -> byPerson.computeIfAbsent(r.personId(), p -> new ArrayList<>())
                        .add(r));
        return byPerson.values().stream()
                .map(rounds -> new Shopping.Van(
                        rounds.get(0).name(),
                        rounds.get(0).depotId(),
                        sheets.loads(
                                week.plan().id(),
                                rounds.get(0).personId(),
                                rounds.get(0).depotId(),
                                rounds)))
                .filter(van -> !van.loads().isEmpty())
                .toList();
    }

    private Map<String, Object> sheetOf(LocalDate monday, UUID person, LocalDate day) {
        Week week = weeks.load(mondays.known(monday));
        TechDay round = round(week, person, day);
        Map<String, Object> model = new HashMap<>();
        model.put("monday", monday);
        model.put("plan", week.plan());
        model.put("round", round);
        model.put("dayWord", Times.day(day));
        model.put("times", week.times(round.key()));
        List<RunSheets.Entry> entries = sheets.entries(week, round);
        model.put("entries", entries);
        model.put("lacking", entries.stream().anyMatch(e -> !e.lacks().isEmpty()));
        model.put("loads", sheets.loads(week.plan().id(), person, round.depotId(), List.of(round)));
        return model;
    }

    private static TechDay round(Week week, UUID person, LocalDate day) {
        return week.round(person, day).orElseThrow(() -> new Missing("round", day));
    }

    private static ResponseEntity<byte[]> download(byte[] bytes, MediaType type, String name) {
        return ResponseEntity.ok()
                .contentType(type)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .body(bytes);
    }
}
