package app.ramkeeper.exchange;

import static app.ramkeeper.exchange.HistoryFields.*;

import app.ramkeeper.catalogue.Catalogue;
import app.ramkeeper.catalogue.TaskKindCard;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.web.Say;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Reads rows of a history: which install is meant, what was done, whether the day can be right. */
@Component
class HistoryReader {

    private final HistoryLookups lookups;
    private final Catalogue catalogue;
    private final Clock clock;

    HistoryReader(HistoryLookups lookups, Catalogue catalogue, Clock clock) {
        this.lookups = lookups;
        this.catalogue = catalogue;
        this.clock = clock;
    }

    /** A row with what it speaks of. */
    record Said(Parsed row, HistoryLookups.@Nullable Found install, Set<TaskKindCard> works) {

        VisitKind kind() {
            String kind = row.text(KIND);
            return kind == null ? VisitKind.SERVICE : VisitKind.valueOf(kind);
        }

        /** The visit's own reference or, without one, all that the row says. */
        String thing() {
            String reference = row.text(REFERENCE);
            return reference != null ? reference : RegisterCheck.content(row);
        }
    }

    List<Said> read(Import imported, List<StagedRow> batch) {
        CellReader cells = new CellReader(imported, HistoryFields.all(), LocalDate.now(clock));
        List<Parsed> rows = batch.stream().map(cells::read).toList();
        Known known = new Known(
                lookups.byReference(asked(rows, INSTALL)),
                lookups.bySerial(asked(rows, SERIAL)),
                lookups.bySite(asked(rows, SITE)),
                new WorkWords(catalogue.taskKinds()));
        return rows.stream().map(row -> said(row, known)).toList();
    }

    private record Known(
            Map<String, List<HistoryLookups.Found>> references,
            Map<String, List<HistoryLookups.Found>> serials,
            Map<String, List<HistoryLookups.Found>> sites,
            WorkWords words) {}

    private static Set<String> asked(List<Parsed> rows, String field) {
        return rows.stream()
                .map(row -> row.text(field))
                .filter(Objects::nonNull)
                .map(String::valueOf)
                .collect(Collectors.toSet());
    }

    private static Said said(Parsed row, Known known) {
        HistoryLookups.Found install = install(row, known);
        Set<TaskKindCard> works = works(row, known.words());
        Said said = new Said(row, install, works);
        Optional<LocalDate> day = row.date(DATE);
        LocalDate since = install == null ? null : install.commissionedOn();
        if (day.isPresent()
                && since != null
                && day.get().isBefore(since)
                && !said.kind().mayPrecedeCommissioning()) {
            row.problem(
                    DATE,
                    "The visit of %s lies before the install was commissioned (%s). Only a survey, an installation or a commissioning can."
                            .formatted(Say.day(day.get()), Say.day(since)));
        }
        Double driven = row.number(DRIVE_FLOW);
        Double delivered = row.number(DELIVERED);
        if (driven != null && delivered != null && delivered > driven) {
            row.problem(
                    DELIVERED,
                    "More water delivered than driven (drive flow %s l/min): that cannot be. Correct one of the two, or leave blank what is not known."
                            .formatted(Parsed.plain(driven)));
        }
        return said;
    }

    private static HistoryLookups.@Nullable Found install(Parsed row, Known known) {
        if (row.has(INSTALL)) {
            return one(row, INSTALL, known.references(), "There is no install with reference “%s” in the register.");
        }
        if (row.has(SERIAL)) {
            return one(row, SERIAL, known.serials(), "No pump with serial “%s” stands at an install of the register.");
        }
        if (row.has(SITE)) {
            return one(row, SITE, known.sites(), "There is no site “%s” with an install in the register.");
        }
        row.problem(INSTALL, "Say which install: its reference, its pump's serial or its site.");
        return null;
    }

    private static HistoryLookups.@Nullable Found one(
            Parsed row, String field, Map<String, List<HistoryLookups.Found>> known, String unknown) {
        List<HistoryLookups.Found> found = known.getOrDefault(String.valueOf(row.text(field)), List.of());
        if (found.isEmpty()) {
            row.problem(field, unknown.formatted(row.text(field)));
        } else if (found.size() > 1) {
            row.problem(
                    field,
                    "“%s” has %d installs. Give the install's reference.".formatted(row.text(field), found.size()));
        }
        return found.size() == 1 ? found.get(0) : null;
    }

    private static Set<TaskKindCard> works(Parsed row, WorkWords words) {
        String text = row.text(WORK);
        if (text == null) {
            return Set.of();
        }
        WorkWords.Found found = words.read(text);
        if (!found.unknown().isEmpty()) {
            row.problem(
                    WORK,
                    "“%s” is no kind of task of the catalogue. Write the kind's name, or move these words to the note."
                            .formatted(String.join("”, “", found.unknown())));
        }
        return found.kinds();
    }
}
