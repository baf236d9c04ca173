package app.ramkeeper.exchange;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** What the rows of one kind of import become. Each method works within the caller's transaction. */
interface Target {

    /** What columns can say. */
    List<Field> fields();

    /** Looks at rows without changing anything. */
    List<Verdict> check(Import imported, List<StagedRow> rows);

    /** Marks good rows that name the same thing as an earlier one. */
    void refuseTwins(ImportId id);

    /** Brings rows in; gives the ids of what was made of each line, by table. */
    Map<Integer, Map<String, List<UUID>>> apply(Import imported, List<StagedRow> rows);

    /** A sentence if something else has changed what the import made. */
    Optional<String> whyNotUndone(ImportId id);

    /** Takes out again what was made of a row. */
    void undo(Import imported, List<StagedRow> rows);
}
