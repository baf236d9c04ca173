package app.ramkeeper.exchange;

import app.ramkeeper.exchange.reading.DateOrder;
import app.ramkeeper.exchange.reading.DecimalMark;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An import as it stands.
 *
 * @param howRead how the file was read, in words
 * @param orderSeen the date order that the file itself shows
 * @param openDate a date of the file that can be read in two ways
 * @param commaSeen true if the file's numbers have a decimal comma
 * @param openNumber a number of the file that can be read in two ways
 * @param mapping null until the columns were chosen
 * @param remark why the last step ended early, in a sentence
 * @param actor sign-in name of the person who started it
 */
public record Import(
        ImportId id,
        ImportKind kind,
        String fileName,
        String howRead,
        List<String> headings,
        @Nullable DateOrder orderSeen,
        @Nullable String openDate,
        boolean commaSeen,
        @Nullable String openNumber,
        @Nullable Mapping mapping,
        ImportState state,
        boolean stopWanted,
        @Nullable String remark,
        String startedBy,
        String actor,
        Instant createdAt,
        @Nullable Instant finishedAt,
        @Nullable Instant sameFileSince) {

    /** The order to read dates in: said, else seen, else day first for files without such dates. */
    DateOrder order() {
        DateOrder said = mapping == null ? null : mapping.order();
        return said != null ? said : orderSeen != null ? orderSeen : DateOrder.DAY_FIRST;
    }

    DecimalMark mark() {
        DecimalMark said = mapping == null ? null : mapping.mark();
        return said != null ? said : commaSeen ? DecimalMark.COMMA : DecimalMark.POINT;
    }
}
