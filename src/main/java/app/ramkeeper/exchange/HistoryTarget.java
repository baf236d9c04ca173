package app.ramkeeper.exchange;

import static app.ramkeeper.exchange.HistoryFields.*;

import app.ramkeeper.catalogue.Scope;
import app.ramkeeper.catalogue.TaskKindCard;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.people.Accounts;
import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.MeasuredAt;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.Reason;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.ReportSource;
import app.ramkeeper.visits.VisitRecorder;
import app.ramkeeper.visits.WorkOutcome;
import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Rows that become visit reports. A technician whom the company does not know becomes a person without an account. */
@Component
class HistoryTarget implements Target {

    /** Who was there when the file does not say. */
    static final String NOBODY_NAMED = "Not recorded";

    private static final Map<String, Quantity> READINGS = Map.of(
            DRIVE_FLOW, Quantity.DRIVE_FLOW,
            DELIVERED, Quantity.DELIVERED_FLOW,
            BEAT, Quantity.BEAT_RATE,
            PRESSURE, Quantity.DELIVERY_PRESSURE,
            PRECHARGE, Quantity.PRE_CHARGE);

    private final HistoryReader reader;
    private final HistoryLookups lookups;
    private final Changes changes;
    private final RowStore rows;
    private final ImportStore imports;
    private final VisitRecorder recorder;
    private final Accounts people;
    private final EntityManager entities;

    HistoryTarget(
            HistoryReader reader,
            HistoryLookups lookups,
            Changes changes,
            RowStore rows,
            ImportStore imports,
            VisitRecorder recorder,
            Accounts people,
            EntityManager entities) {
        this.reader = reader;
        this.lookups = lookups;
        this.changes = changes;
        this.rows = rows;
        this.imports = imports;
        this.recorder = recorder;
        this.people = people;
        this.entities = entities;
    }

    @Override
    public List<Field> fields() {
        return HistoryFields.all();
    }

    @Override
    public List<Verdict> check(Import imported, List<StagedRow> batch) {
        List<HistoryReader.Said> said = reader.read(imported, batch);
        Map<String, HistoryLookups.Before> before =
                lookups.before(said.stream().map(HistoryReader.Said::thing).collect(Collectors.toSet()));
        return said.stream().map(row -> verdict(row, before.get(row.thing()))).toList();
    }

    private static Verdict verdict(HistoryReader.Said said, HistoryLookups.@Nullable Before before) {
        String content = RegisterCheck.content(said.row());
        RowState state = RowState.READY;
        if (before != null && before.content().equals(content)) {
            return new Verdict(said.row().line(), RowState.UNCHANGED, List.of(), said.thing(), null, content);
        }
        if (before != null) {
            said.row()
                    .problem(
                            REFERENCE,
                            "Visit “%s” came in with other content from %s. Correct it on its own page, or leave this row out."
                                    .formatted(said.row().text(REFERENCE), before.where()));
        }
        if (!said.row().problems().isEmpty()) {
            state = RowState.PROBLEM;
        }
        return new Verdict(said.row().line(), state, said.row().problems(), said.thing(), null, content);
    }

    @Override
    public void refuseTwins(ImportId id) {
        rows.refuseTwins(id, "thing", REFERENCE, "The visit");
    }

    @Override
    public Map<Integer, Map<String, List<UUID>>> apply(Import imported, List<StagedRow> batch) {
        Map<Integer, Map<String, List<UUID>>> made = new LinkedHashMap<>();
        Map<String, UUID> known = lookups.people();
        PersonId by = imports.starter(imported.id());
        for (HistoryReader.Said said : reader.read(imported, batch)) {
            Map<String, List<UUID>> ids = new LinkedHashMap<>();
            List<PersonId> technicians = technicians(said.row(), known, ids);
            RecordVisit command = command(imported, said, technicians);
            try {
                recorder.recordImported(command, by);
            } catch (ReportRefused refused) {
                throw new app.ramkeeper.shared.Conflict("Line " + said.row().line() + ": " + refused.getMessage());
            }
            ids.put("visit_reports", List.of(command.id().value()));
            made.put(said.row().line(), ids);
        }
        return made;
    }

    private List<PersonId> technicians(Parsed row, Map<String, UUID> known, Map<String, List<UUID>> made) {
        String names = row.text(TECHNICIAN);
        List<PersonId> found = new ArrayList<>();
        for (String name : (names == null ? NOBODY_NAMED : names).split("[,;/&+]|\\band\\b")) {
            if (!name.isBlank()) {
                found.add(new PersonId(known.computeIfAbsent(Fold.name(name), key -> {
                    UUID id = people.addPersonOfHistory(name.strip().replaceAll("\\s+", " "))
                            .value();
                    entities.flush();
                    made.computeIfAbsent("people", table -> new ArrayList<>()).add(id);
                    return id;
                })));
            }
        }
        return found.stream().distinct().toList();
    }

    private static RecordVisit command(Import imported, HistoryReader.Said said, List<PersonId> technicians) {
        Parsed row = said.row();
        HistoryLookups.Found at = Objects.requireNonNull(said.install());
        LocalDate day = row.date(DATE).orElseThrow();
        String outcome = row.text(OUTCOME);
        ReportOutcome went = outcome == null ? ReportOutcome.DONE : ReportOutcome.valueOf(outcome);
        return new RecordVisit(
                reportId(imported.id(), row.line()),
                null,
                new SiteId(at.site()),
                said.kind(),
                null,
                day,
                null,
                null,
                null,
                technicians,
                went,
                went == ReportOutcome.COULD_NOT ? Reason.OTHER : null,
                row.text(NOTE),
                false,
                null,
                ReportSource.IMPORT,
                works(said, at, went),
                readings(row, at),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null,
                null);
    }

    /** The same row of the same import always makes the same report, whichever node does it. */
    private static ReportId reportId(ImportId id, int line) {
        return new ReportId(UUID.nameUUIDFromBytes((id + "/" + line).getBytes(StandardCharsets.UTF_8)));
    }

    private static List<RecordVisit.Work> works(HistoryReader.Said said, HistoryLookups.Found at, ReportOutcome went) {
        boolean could = went != ReportOutcome.COULD_NOT;
        return said.works().stream()
                .map(kind -> new RecordVisit.Work(
                        new InstallId(at.install()),
                        pump(kind, at),
                        kind.id(),
                        null,
                        could ? WorkOutcome.DONE : WorkOutcome.COULD_NOT,
                        could ? null : Reason.OTHER,
                        null,
                        DoneBy.US,
                        false,
                        null))
                .toList();
    }

    private static @Nullable PumpId pump(TaskKindCard kind, HistoryLookups.Found at) {
        return kind.scope() == Scope.PUMP && at.pump() != null ? new PumpId(at.pump()) : null;
    }

    private static List<RecordVisit.Reading> readings(Parsed row, HistoryLookups.Found at) {
        return READINGS.entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .flatMap(entry -> row
                        .measured(entry.getKey())
                        .map(value -> new RecordVisit.Reading(
                                new InstallId(at.install()),
                                null,
                                entry.getValue(),
                                MeasuredAt.PUMP,
                                value,
                                null,
                                null,
                                true,
                                null))
                        .stream())
                .toList();
    }

    @Override
    public Optional<String> whyNotUndone(ImportId id) {
        return changes.correctedSince(id);
    }

    @Override
    public void undo(Import imported, List<StagedRow> batch) {
        PersonId by = imports.starter(imported.id());
        for (StagedRow row : batch) {
            row.made()
                    .getOrDefault("visit_reports", List.of())
                    .forEach(id -> recorder.withdraw(
                            new ReportId(id), "Import of " + imported.fileName() + " taken back", by));
        }
    }
}
