package app.ramkeeper.field;

import app.ramkeeper.shared.Text;
import app.ramkeeper.visits.RecordVisit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Water samples, disinfection and cleaning, as the site's history keeps them. */
final class WaterRecord {

    private WaterRecord() {}

    /** The record in words, a line each. */
    static List<String> lines(PhoneVisit.@Nullable Water w) {
        List<String> lines = new ArrayList<>();
        if (w == null) {
            return lines;
        }
        add(lines, "Water sample: ", w.sample(), w.where());
        add(lines, "Water result: ", w.result());
        Integer minutes = w.contactMinutes();
        String flushed = text(w.flushed());
        add(
                lines,
                "Disinfected, pump isolated: ",
                w.product(),
                w.strength(),
                minutes == null ? null : minutes + " min contact",
                flushed == null ? null : "flushed " + flushed);
        add(lines, "Boots and tools cleaned: ", w.cleaned());
        return lines;
    }

    private static void add(List<String> lines, String start, @Nullable String... parts) {
        List<String> said = new ArrayList<>();
        for (String part : parts) {
            Optional.ofNullable(text(part)).ifPresent(said::add);
        }
        if (!said.isEmpty()) {
            lines.add(start + String.join(", ", said));
        }
    }

    /** The next sample as something left to do, with its date. */
    static Optional<RecordVisit.FollowUp> next(PhoneVisit.@Nullable Water w) {
        return Optional.ofNullable(w)
                .map(PhoneVisit.Water::next)
                .map(day -> new RecordVisit.FollowUp("Take the next water sample", day, false));
    }

    /** Whether something was dosed without word that the pump was shut off from it. */
    static boolean dosedUnisolated(PhoneVisit.@Nullable Water w) {
        return w != null && !w.isolated() && text(w.product()) != null;
    }

    private static @Nullable String text(@Nullable String typed) {
        String clean = Text.clean(typed);
        return clean == null || clean.isEmpty() ? null : clean;
    }
}
