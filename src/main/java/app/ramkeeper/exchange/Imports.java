package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.Evidence;
import app.ramkeeper.exchange.reading.FileKind;
import app.ramkeeper.exchange.reading.Reading;
import app.ramkeeper.exchange.reading.Row;
import app.ramkeeper.exchange.reading.TableFile;
import app.ramkeeper.exchange.reading.Unreadable;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.Slice;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What people do with imports: choose a file, map its columns, bring it in, mend rows, take it back. */
@Service
@ForSetup
public class Imports {

    private static final int STAGE = 500;

    private final ImportStore store;
    private final RowStore rows;
    private final Makes makes;
    private final Targets targets;
    private final ImportJobs jobs;
    private final ImportSettings settings;

    Imports(ImportStore store, RowStore rows, Makes makes, Targets targets, ImportJobs jobs, ImportSettings settings) {
        this.store = store;
        this.rows = rows;
        this.makes = makes;
        this.targets = targets;
        this.jobs = jobs;
        this.settings = settings;
    }

    /** A file as it was sent; the name is only shown, never used as a path. */
    public record Upload(Path file, String name, @Nullable String type) {}

    /**
     * Reads a file into rows that wait to be mapped.
     *
     * @throws Unreadable with a sentence; then nothing is kept
     */
    @Transactional
    public ImportId stage(ImportKind kind, Upload upload, Reading reading, CurrentUser user) {
        ImportId id = ImportId.next();
        try {
            settings.limits().accept(Files.size(upload.file()));
            FileKind fileKind = FileKind.of(upload.file(), upload.name(), upload.type());
            TableFile table = TableFile.of(upload.file(), fileKind, reading, settings.limits());
            store.add(id, kind, shortened(upload.name()), sha256(upload.file()), user);
            stage(id, table);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return id;
    }

    private void stage(ImportId id, TableFile table) throws IOException {
        List<String> headings = new ArrayList<>();
        List<Row> batch = new ArrayList<>(STAGE);
        Evidence evidence = new Evidence();
        table.read(headings::addAll, row -> {
            row.cells().forEach(evidence::see);
            batch.add(row);
            if (batch.size() == STAGE) {
                rows.stage(id, batch);
                batch.clear();
            }
        });
        rows.stage(id, batch);
        store.describe(id, table.words(), headings, evidence);
    }

    @Transactional(readOnly = true)
    public Import get(ImportId id) {
        return store.get(id);
    }

    @Transactional(readOnly = true)
    public Slice<Import> list(@Nullable String after) {
        return store.list(after);
    }

    /** How many rows of these imports still have problems; of those that have any. */
    @Transactional(readOnly = true)
    public Map<ImportId, Integer> withProblems(List<ImportId> ids) {
        return store.withProblems(ids);
    }

    @Transactional(readOnly = true)
    public Counts counts(ImportId id) {
        return store.counts(id);
    }

    /** What the ready rows would make. */
    @Transactional(readOnly = true)
    public Makes.Made makes(Import imported) {
        return makes.of(imported);
    }

    public List<Field> fields(ImportKind kind) {
        return targets.of(kind).fields();
    }

    @Transactional(readOnly = true)
    public List<StagedRow> firstRows(ImportId id, int most) {
        return rows.first(id, most);
    }

    @Transactional(readOnly = true)
    public List<StagedRow> rows(ImportId id, RowState state, int afterLine, int most) {
        return rows.inState(id, state, afterLine, most);
    }

    @Transactional(readOnly = true)
    public StagedRow row(ImportId id, int line) {
        return rows.find(id, line).orElseThrow(() -> new Missing("row", line));
    }

    /** The mapping to offer: what was chosen before, for this file or for these headings, else a guess. */
    @Transactional(readOnly = true)
    public Mapping offered(Import imported) {
        if (imported.mapping() != null) {
            return imported.mapping();
        }
        return store.remembered(imported.kind(), imported.headings())
                .orElseGet(() -> new Mapping(
                        Mapping.guess(fields(imported.kind()), imported.headings()), imported.orderSeen(), null));
    }

    /** Takes the columns and starts the dry run. */
    @Transactional
    public void map(ImportId id, Mapping mapping) {
        require(
                store.lock(id),
                "The columns can be chosen again only before the rows are brought in.",
                ImportState.STAGED,
                ImportState.CHECKED,
                ImportState.UNDONE);
        Import imported = store.get(id);
        store.map(id, mapping);
        store.remember(Uuids.next(), imported.kind(), imported.headings(), mapping);
        rows.reset(id);
        store.moveTo(id, ImportState.CHECKING, null);
        jobs.schedule(id);
    }

    /** Brings the good rows in. */
    @Transactional
    public void apply(ImportId id) {
        require(
                store.lock(id),
                "The rows can be brought in once they have been checked.",
                ImportState.CHECKED,
                ImportState.APPLIED);
        if (store.counts(id).of("READY") == 0) {
            throw new Conflict("There is no row left to bring in.");
        }
        store.moveTo(id, ImportState.APPLYING, null);
        jobs.schedule(id);
    }

    /** Takes all that the import made out of the register again. */
    @Transactional
    public void undo(ImportId id) {
        require(store.lock(id), "There is nothing to take back.", ImportState.APPLIED);
        targets.of(store.get(id).kind()).whyNotUndone(id).ifPresent(sentence -> {
            throw new Conflict(sentence);
        });
        store.moveTo(id, ImportState.UNDOING, null);
        jobs.schedule(id);
    }

    /** Asks the job to stop after the rows it has in hand. */
    @Transactional
    public void stop(ImportId id) {
        store.get(id);
        store.wantStop(id);
    }

    /** Takes mended cells and checks the row again at once. */
    @Transactional
    public StagedRow mend(ImportId id, int line, List<String> cells) {
        require(
                store.lock(id),
                "Rows are mended when no job works on the import.",
                ImportState.CHECKED,
                ImportState.APPLIED);
        rows.mend(id, line, cells);
        StagedRow row = row(id, line);
        if (row.state() == RowState.PROBLEM || row.state() == RowState.READY) {
            Target target = targets.of(store.get(id).kind());
            rows.judge(id, target.check(store.get(id), List.of(row)));
            target.refuseTwins(id);
        }
        return row(id, line);
    }

    private static void require(ImportState state, String sentence, ImportState... allowed) {
        if (!List.of(allowed).contains(state)) {
            throw new Conflict(sentence);
        }
    }

    private static String shortened(String name) {
        String plain = name.replaceAll("[\\p{Cntrl}\\u202A-\\u202E\\u2066-\\u2069]", "")
                .replaceAll(".*[/\\\\]", "");
        return plain.isBlank() ? "file" : plain.length() <= 200 ? plain : plain.substring(plain.length() - 200);
    }

    private static byte[] sha256(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[16_384];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                digest.update(buffer, 0, read);
            }
            return digest.digest();
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256", impossible);
        }
    }
}
