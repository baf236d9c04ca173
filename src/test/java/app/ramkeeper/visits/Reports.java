package app.ramkeeper.visits;

import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Measured;
import app.ramkeeper.shared.Unit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Builds reports for tests, step by step from a plain one that is right. */
public final class Reports {

    private RecordVisit report;

    private Reports(RecordVisit report) {
        this.report = report;
    }

    /** A service visit where nothing was noted. */
    public static Reports service(SiteId site, PersonId who, LocalDate on) {
        return of(VisitKind.SERVICE, site, who, on);
    }

    public static Reports of(VisitKind kind, SiteId site, PersonId who, LocalDate on) {
        return new Reports(new RecordVisit(
                ReportId.next(),
                null,
                site,
                kind,
                null,
                on,
                null,
                null,
                null,
                List.of(who),
                ReportOutcome.DONE,
                null,
                null,
                false,
                null,
                ReportSource.FORM,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null,
                null));
    }

    public RecordVisit build() {
        return report;
    }

    public Reports id(ReportId id) {
        return copy(id, report.visit(), report.supersedes(), report.outcome(), report.reason(), report.note());
    }

    public Reports visit(VisitId visit) {
        return copy(report.id(), visit, report.supersedes(), report.outcome(), report.reason(), report.note());
    }

    public Reports corrects(ReportId old) {
        return copy(report.id(), report.visit(), old, report.outcome(), report.reason(), report.note());
    }

    public Reports commissioned(InstallId install, String setting) {
        report = report.orCommissioned(new RecordVisit.Commissioned(install, setting, null));
        return this;
    }

    public Reports note(String note) {
        return copy(report.id(), report.visit(), report.supersedes(), report.outcome(), report.reason(), note);
    }

    public Reports inVain(Reason reason) {
        return copy(report.id(), report.visit(), report.supersedes(), ReportOutcome.COULD_NOT, reason, report.note());
    }

    public Reports done(InstallId install, TaskKindId kind) {
        return work(
                new RecordVisit.Work(install, null, kind, null, WorkOutcome.DONE, null, null, DoneBy.US, false, null));
    }

    public Reports work(RecordVisit.Work work) {
        return with(add(report.works(), work), report.readings(), report.parts(), report.findings());
    }

    public Reports reading(InstallId install, Quantity quantity, MeasuredAt place, String value, Unit unit) {
        return reading(new RecordVisit.Reading(
                install, null, quantity, place, Measured.of(value, unit), null, null, false, null));
    }

    public Reports reading(RecordVisit.Reading reading) {
        return with(report.works(), add(report.readings(), reading), report.parts(), report.findings());
    }

    public Reports part(RecordVisit.PartUsed part) {
        return with(report.works(), report.readings(), add(report.parts(), part), report.findings());
    }

    public Reports finding(RecordVisit.Finding finding) {
        return with(report.works(), report.readings(), report.parts(), add(report.findings(), finding));
    }

    public Reports people(PersonId... people) {
        return with(List.of(people), report.photos());
    }

    public Reports photo(RecordVisit.Photo photo) {
        return with(report.people(), add(report.photos(), photo));
    }

    private Reports with(List<PersonId> people, List<RecordVisit.Photo> photos) {
        RecordVisit r = report;
        report = new RecordVisit(
                r.id(),
                r.visit(),
                r.site(),
                r.kind(),
                r.supersedes(),
                r.attendedOn(),
                r.startedAt(),
                r.arrivedAt(),
                r.leftAt(),
                people,
                r.outcome(),
                r.reason(),
                r.note(),
                r.nobodyThere(),
                r.customerName(),
                r.source(),
                r.works(),
                r.readings(),
                r.findings(),
                r.parts(),
                photos,
                r.followUps(),
                r.water(),
                r.commissioned());
        return this;
    }

    private static <T> List<T> add(List<T> items, T item) {
        List<T> more = new ArrayList<>(items);
        more.add(item);
        return more;
    }

    private Reports with(
            List<RecordVisit.Work> works,
            List<RecordVisit.Reading> readings,
            List<RecordVisit.PartUsed> parts,
            List<RecordVisit.Finding> findings) {
        RecordVisit r = report;
        report = new RecordVisit(
                r.id(),
                r.visit(),
                r.site(),
                r.kind(),
                r.supersedes(),
                r.attendedOn(),
                r.startedAt(),
                r.arrivedAt(),
                r.leftAt(),
                r.people(),
                r.outcome(),
                r.reason(),
                r.note(),
                r.nobodyThere(),
                r.customerName(),
                r.source(),
                works,
                readings,
                findings,
                parts,
                r.photos(),
                r.followUps(),
                r.water(),
                r.commissioned());
        return this;
    }

    private Reports copy(
            ReportId id,
            @Nullable VisitId visit,
            @Nullable ReportId supersedes,
            ReportOutcome outcome,
            @Nullable Reason reason,
            @Nullable String note) {
        RecordVisit r = report;
        report = new RecordVisit(
                id,
                visit,
                r.site(),
                r.kind(),
                supersedes,
                r.attendedOn(),
                r.startedAt(),
                r.arrivedAt(),
                r.leftAt(),
                r.people(),
                outcome,
                reason,
                note,
                r.nobodyThere(),
                r.customerName(),
                r.source(),
                r.works(),
                r.readings(),
                r.findings(),
                r.parts(),
                r.photos(),
                r.followUps(),
                r.water(),
                r.commissioned());
        return this;
    }
}
