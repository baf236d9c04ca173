package app.ramkeeper.visits;

import app.ramkeeper.shared.Uuids;
import java.util.UUID;

/** Identifies a visit report; made where the report is written, so that sending it twice makes one. */
public record ReportId(UUID value) {

    public static ReportId next() {
        return new ReportId(Uuids.next());
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
