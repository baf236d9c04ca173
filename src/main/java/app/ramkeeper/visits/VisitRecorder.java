package app.ramkeeper.visits;

import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.ReportRefused.Problem;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The one way by which reports come in: from the form, the phone and the import.
 *
 * <p>A report is told by the id its writer made. The same id with the same content gives the first result again; with
 * other content it is refused. Report, works, readings, parts and their stock movements, the visit's state, baseline and
 * due dates are one transaction.
 */
@Service
@Transactional
public class VisitRecorder {

    private static final Logger LOG = LoggerFactory.getLogger(VisitRecorder.class);

    private final ReportStore reports;
    private final ReportFacts facts;
    private final VisitRepository visits;
    private final HeldReports held;
    private final Superseding superseding;
    private final ReportEffects effects;
    private final InVain inVain;
    private final ContentHash hashes;
    private final Clock clock;

    VisitRecorder(
            ReportStore reports,
            ReportFacts facts,
            VisitRepository visits,
            HeldReports held,
            Superseding superseding,
            ReportEffects effects,
            InVain inVain,
            ContentHash hashes,
            Clock clock) {
        this.reports = reports;
        this.facts = facts;
        this.visits = visits;
        this.held = held;
        this.superseding = superseding;
        this.effects = effects;
        this.inVain = inVain;
        this.hashes = hashes;
        this.clock = clock;
    }

    /**
     * Records a report, or keeps it to be settled when it meets a visit that is reported or cancelled already.
     *
     * @throws ReportRefused if it breaks a rule; nothing is recorded then
     */
    @ForField
    public Recorded record(RecordVisit command, PersonId by) {
        return take(command, by);
    }

    /** The rules that a report would break, so that a form can name them all at once. */
    @ForField
    @Transactional(readOnly = true)
    public List<Problem> problems(RecordVisit sent) {
        RecordVisit command = placed(sent);
        return ReportRules.broken(command, facts.of(command), LocalDate.now(clock));
    }

    /** Keeps a report for the office to settle, word for word, and applies nothing of it. */
    @ForField
    public Recorded keepToSettle(RecordVisit command, HeldBecause because, PersonId by) {
        byte[] hash = hashes.of(command);
        return repeated(command.id(), hash).orElseGet(() -> hold(command, hash, because, by));
    }

    /** Records a report out of an imported history. */
    @ForSetup
    public Recorded recordImported(RecordVisit command, PersonId by) {
        if (command.source() != ReportSource.IMPORT) {
            throw new IllegalArgumentException("Only an import records history");
        }
        return take(command, by);
    }

    /**
     * Takes an imported report out of force, when its import is undone. The rows stay; its id stays taken.
     *
     * @throws Conflict if it is no longer in force
     */
    @ForSetup
    public void withdraw(ReportId id, String why, PersonId by) {
        Superseding.Old old = superseding.hold(id).orElseThrow(() -> new Missing("report", id));
        if (old.superseded()) {
            throw new Conflict("This report was corrected or withdrawn meanwhile.");
        }
        superseding.withdraw(old, why, by);
        effects.undo(old, by);
    }

    private Recorded take(RecordVisit sent, PersonId by) {
        byte[] hash = hashes.of(sent);
        Optional<Recorded> before = repeated(sent.id(), hash);
        if (before.isPresent()) {
            return before.get();
        }
        RecordVisit command = placed(sent);
        refuse(ReportRules.broken(command, facts.of(command), LocalDate.now(clock)));
        Optional<HeldBecause> obstacle = obstacle(command);
        if (obstacle.isPresent()) {
            // The obstacle may be this very report, committed while this request waited for the visit's row.
            return repeated(command.id(), hash).orElseGet(() -> hold(sent, hash, obstacle.get(), by));
        }
        return write(command, hash, by);
    }

    /** Records a report that was held, with the visit or the report it supersedes that a person has chosen for it. */
    Recorded settle(RecordVisit held, byte[] hash, PersonId by) {
        RecordVisit chosen = placed(held);
        refuse(ReportRules.broken(chosen, facts.of(chosen), LocalDate.now(clock)));
        if (obstacle(chosen).isPresent()) {
            throw new Conflict("The visit has changed meanwhile. Look at the list again.");
        }
        return write(chosen, hash, by);
    }

    /** A report that names a site which was merged meanwhile is one of the site that was kept. */
    private RecordVisit placed(RecordVisit sent) {
        return sent.at(facts.standing(sent.site()));
    }

    private Recorded write(RecordVisit sound, byte[] hash, PersonId by) {
        Optional<Superseding.Old> old = Optional.ofNullable(sound.supersedes()).flatMap(superseding::hold);
        RecordVisit command = inVain.complete(
                sound.orCommissioned(old.map(Superseding.Old::commissioned).orElse(null)));
        // A correction stays beside what it corrects, also where that names a site that was merged since.
        SiteId site = old.map(Superseding.Old::site).orElse(command.site());
        if (!reports.insertHead(command.at(site), by, hash)) {
            // The same id was just committed by another request.
            return repeated(command.id(), hash)
                    .orElseThrow(() -> new IllegalStateException("Report " + command.id() + " vanished"));
        }
        old.ifPresent(o -> effects.undo(o, by));
        effects.apply(command, reports.insertParts(command), by);
        LOG.info("Report {} recorded for site {}", command.id(), command.site());
        return new Recorded.Applied(command.id(), false);
    }

    private Recorded hold(RecordVisit command, byte[] hash, HeldBecause because, PersonId by) {
        if (!held.keep(command, hash, because, by)) {
            return repeated(command.id(), hash)
                    .orElseThrow(() -> new IllegalStateException("Report " + command.id() + " vanished"));
        }
        LOG.info("Report {} waits to be settled: {}", command.id(), because);
        return new Recorded.Held(command.id(), because, false);
    }

    private Optional<Recorded> repeated(ReportId id, byte[] hash) {
        return reports.known(id).map(known -> {
            if (!MessageDigest.isEqual(known.hash(), hash)) {
                throw new ReportRefused(List.of(new Problem(
                        "id",
                        "This report was sent before with other content. What was sent first stands;"
                                + " open it and correct it there.")));
            }
            return known.held() == null ? new Recorded.Applied(id, true) : new Recorded.Held(id, known.held(), true);
        });
    }

    /** What stands in the way of applying a sound report; holds the visit and the superseded report while it looks. */
    private Optional<HeldBecause> obstacle(RecordVisit command) {
        ReportId supersedes = command.supersedes();
        if (supersedes != null) {
            Superseding.Old old = superseding.hold(supersedes).orElseThrow(() -> new Missing("report", supersedes));
            requireSame(old, command);
            return old.superseded() ? Optional.of(HeldBecause.SUPERSEDED_ALREADY) : Optional.empty();
        }
        if (command.visit() == null) {
            return Optional.empty();
        }
        Optional<Visit> visit = visits.hold(command.visit().value());
        if (visit.isEmpty()) {
            return Optional.of(HeldBecause.VISIT_UNKNOWN);
        }
        if (!facts.standing(new SiteId(visit.get().siteId())).equals(command.site())) {
            refuse(List.of(new Problem("site", "The planned visit is at another site.", true)));
        }
        return switch (visit.get().state()) {
            case CANCELLED -> Optional.of(HeldBecause.VISIT_CANCELLED);
            case DONE, COULD_NOT -> Optional.of(HeldBecause.SECOND_REPORT);
            case PLANNED -> Optional.empty();
        };
    }

    private void requireSame(Superseding.Old old, RecordVisit command) {
        if (!facts.standing(old.site()).equals(command.site())) {
            refuse(List.of(new Problem("site", "A correction is of the same site.")));
        }
        if (!java.util.Objects.equals(old.visit(), command.visit())) {
            refuse(List.of(new Problem("visit", "A correction is of the same visit.")));
        }
    }

    private static void refuse(List<Problem> problems) {
        if (!problems.isEmpty()) {
            throw new ReportRefused(problems);
        }
    }
}
