package app.ramkeeper.exchange;

import app.ramkeeper.audit.Actor;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.web.DatabaseRules;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Works on an import: checks its rows, brings them in, takes them back.
 *
 * <p>Rows are taken by their own state and marked in the transaction that does the work, under a lock. So a
 * job that was killed, or that two nodes run, never does a row twice, and another node goes on where it ended.
 */
@Component
class ImportRun {

    private static final Logger LOG = LoggerFactory.getLogger(ImportRun.class);
    private static final int CHECKED_AT_ONCE = 500;
    private static final Duration WAIT = Duration.ofMillis(300);

    private final ImportStore store;
    private final RowStore rows;
    private final Targets targets;
    private final ImportSettings settings;
    private final TransactionTemplate transaction;
    private final Gate gate;
    private final DatabaseRules rules;

    ImportRun(
            ImportStore store,
            RowStore rows,
            Targets targets,
            ImportSettings settings,
            PlatformTransactionManager transactions,
            Gate gate,
            DatabaseRules rules) {
        this.store = store;
        this.rows = rows;
        this.targets = targets;
        this.settings = settings;
        this.transaction = new TransactionTemplate(transactions);
        this.gate = gate;
        this.rules = rules;
    }

    /** Does what the import's state asks for, until it is done or stopped. */
    void run(ImportId id) {
        Import imported = store.get(id);
        LOG.info("Import {} of {} goes on: {}", id, imported.kind(), imported.state());
        asStarter(imported, () -> {
            switch (imported.state()) {
                case CHECKING -> repeat(id, ImportState.CHECKING, () -> checkBatch(id));
                case APPLYING -> apply(id);
                case UNDOING -> repeat(id, ImportState.UNDOING, () -> undoAll(id));
                default -> LOG.info("Import {} has nothing to do", id);
            }
            return true;
        });
        LOG.info("Import {}: {}", id, store.get(id).state());
    }

    /** What became of one batch. */
    private enum Step {
        MORE,
        DONE,
        BUSY
    }

    /** Brings rows in; of a batch that the register refuses, row by row, so that a bad one holds back only itself. */
    private void apply(ImportId id) {
        Pace pace = new Pace(settings.batch());
        repeat(id, ImportState.APPLYING, () -> applyBatch(id, pace), refusal -> {
            if (pace.refusedOne()) {
                transaction.executeWithoutResult(status -> refuseNext(id, refusal));
            }
        });
    }

    private void repeat(ImportId id, ImportState state, Supplier<Step> batch) {
        repeat(id, state, batch, refusal -> {
            throw refusal;
        });
    }

    /** Repeats a step, each batch in a transaction of its own, until nothing is left. */
    private void repeat(ImportId id, ImportState state, Supplier<Step> batch, Consumer<RuntimeException> whenRefused) {
        Step step = Step.MORE;
        while (step != Step.DONE) {
            try {
                step = attempt(id, state, batch, whenRefused);
            } catch (DataAccessResourceFailureException away) {
                throw away;
            } catch (RuntimeException failure) {
                LOG.error("Import {} ended early in {}", id, state, failure);
                end(id, state, failure);
                step = Step.DONE;
            }
            if (step == Step.BUSY) {
                LockSupport.parkNanos(WAIT.toNanos());
            }
        }
    }

    private Step attempt(ImportId id, ImportState state, Supplier<Step> batch, Consumer<RuntimeException> whenRefused) {
        try {
            return Objects.requireNonNull(transaction.execute(status -> once(id, state, batch)));
        } catch (DataIntegrityViolationException | Conflict refusal) {
            whenRefused.accept(refusal);
            return Step.MORE;
        }
    }

    private Step once(ImportId id, ImportState state, Supplier<Step> batch) {
        if (!gate.take(id)) {
            return Step.BUSY;
        }
        return store.get(id).state() == state ? batch.get() : Step.DONE;
    }

    private Step checkBatch(ImportId id) {
        List<StagedRow> batch = rows.inState(id, RowState.NEW, 0, CHECKED_AT_ONCE);
        Import imported = store.get(id);
        Target target = targets.of(imported.kind());
        if (batch.isEmpty() || imported.stopWanted()) {
            target.refuseTwins(id);
            store.moveTo(
                    id,
                    batch.isEmpty() ? ImportState.CHECKED : ImportState.STAGED,
                    batch.isEmpty() ? null : "The check was stopped; not every row was looked at.");
            return Step.DONE;
        }
        rows.judge(id, target.check(imported, batch));
        return Step.MORE;
    }

    private Step applyBatch(ImportId id, Pace pace) {
        Import imported = store.get(id);
        List<StagedRow> batch = rows.inState(id, RowState.READY, 0, pace.rows());
        if (batch.isEmpty() || imported.stopWanted()) {
            store.moveTo(
                    id,
                    ImportState.APPLIED,
                    batch.isEmpty() ? null : "Stopped: the rows that are still ready were not brought in.");
            return Step.DONE;
        }
        if (!gate.takeWriting()) {
            return Step.BUSY;
        }
        Target target = targets.of(imported.kind());
        List<Verdict> again = target.check(imported, batch);
        rows.judge(id, again);
        List<Integer> good = again.stream()
                .filter(v -> v.state() == RowState.READY)
                .map(Verdict::line)
                .toList();
        List<StagedRow> ready =
                batch.stream().filter(row -> good.contains(row.line())).toList();
        if (!ready.isEmpty()) {
            rows.applied(id, target.apply(imported, ready));
        }
        pace.done();
        return Step.MORE;
    }

    /** Puts the row that comes next on the fix list: brought in alone, it was refused. */
    private void refuseNext(ImportId id, RuntimeException refusal) {
        if (gate.take(id)) {
            rows.inState(id, RowState.READY, 0, 1)
                    .forEach(row -> rows.refuse(id, row.line(), Problem.ofRow(refused(refusal))));
        }
    }

    private String refused(RuntimeException refusal) {
        LOG.warn("A row was refused", refusal);
        String known = refusal instanceof DataIntegrityViolationException broken
                ? rules.sentence(broken).orElse(null)
                : refusal.getMessage();
        return known != null
                ? known
                : "The register refused this row. Compare it with what is there already; the details are in the server's log.";
    }

    /** Takes all back or nothing. */
    private Step undoAll(ImportId id) {
        if (!gate.takeWriting()) {
            return Step.BUSY;
        }
        Import imported = store.get(id);
        targets.of(imported.kind()).undo(imported, rows.made(id));
        rows.undone(id);
        store.moveTo(id, ImportState.UNDONE, null);
        return Step.DONE;
    }

    private void end(ImportId id, ImportState step, RuntimeException failure) {
        ImportState back = step == ImportState.CHECKING ? ImportState.STAGED : ImportState.APPLIED;
        transaction.executeWithoutResult(status -> store.moveTo(id, back, sentence(step, failure)));
    }

    private static String sentence(ImportState step, RuntimeException failure) {
        if (failure instanceof Conflict known) {
            return String.valueOf(known.getMessage());
        }
        if (step == ImportState.UNDOING && failure instanceof DataIntegrityViolationException) {
            return "Something recorded since refers to what this import brought in; nothing was taken back.";
        }
        return "The work ended early because of a fault; what was done before stands. The details are in the server's log.";
    }

    /** The job acts for the person who started it, with the office's rights. */
    private static <T> T asStarter(Import imported, Supplier<T> work) {
        SecurityContext before = SecurityContextHolder.getContext();
        SecurityContextHolder.setContext(new SecurityContextImpl(UsernamePasswordAuthenticationToken.authenticated(
                imported.actor(), null, AuthorityUtils.createAuthorityList("ROLE_OFFICE"))));
        try {
            return Actor.as(new Actor(imported.actor(), ImportJobs.source(imported.id())), work);
        } finally {
            SecurityContextHolder.setContext(before);
        }
    }
}
