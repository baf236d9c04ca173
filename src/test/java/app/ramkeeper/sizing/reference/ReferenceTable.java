package app.ramkeeper.sizing.reference;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Reads the reference table. */
final class ReferenceTable {

    private ReferenceTable() {}

    static List<ReferenceCase> rows() {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader reader = new InputStreamReader(
                Objects.requireNonNull(ReferenceTable.class.getResourceAsStream("/sizing/hydraulics.csv")),
                StandardCharsets.UTF_8)) {
            return format.parse(reader).stream().map(ReferenceTable::row).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ReferenceCase row(CSVRecord row) {
        return new ReferenceCase(
                row.get("id"),
                row.get("topic"),
                ReferenceCase.parse(row.get("inputs")),
                row.get("expected_quantity"),
                Double.parseDouble(row.get("expected_value")),
                row.get("unit"),
                row.get("tolerance"),
                row.get("source"),
                row.get("provenance"));
    }
}
