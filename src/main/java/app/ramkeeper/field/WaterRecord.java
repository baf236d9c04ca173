package app.ramkeeper.field;

import app.ramkeeper.shared.Text;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.WaterCare;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Turns a phone's words on water samples, disinfection and cleaning into the record. */
final class WaterRecord {

    private WaterRecord() {}

    /** The record of a visit on this day; null if nothing was said. */
    static @Nullable WaterCare of(PhoneVisit.@Nullable Water w, LocalDate on) {
        if (w == null) {
            return null;
        }
        List<WaterCare.Sample> samples = sampled(w) ? List.of(sample(w, on)) : List.of();
        WaterCare.Hygiene hygiene = cared(w) ? hygiene(w) : null;
        return samples.isEmpty() && hygiene == null ? null : new WaterCare(samples, hygiene);
    }

    private static boolean sampled(PhoneVisit.Water w) {
        return w.next() != null
                || !results(w).isEmpty()
                || Stream.of(w.sample(), w.where(), w.result(), w.laboratory())
                        .map(WaterRecord::text)
                        .anyMatch(Objects::nonNull);
    }

    private static WaterCare.Sample sample(PhoneVisit.Water w, LocalDate on) {
        return new WaterCare.Sample(
                text(w.sample()),
                text(w.where()),
                on,
                w.takenTime(),
                text(w.takenBy()),
                text(w.laboratory()),
                text(w.result()),
                w.next(),
                results(w));
    }

    private static List<WaterCare.Result> results(PhoneVisit.Water w) {
        return w.results() == null
                ? List.of()
                : w.results().stream()
                        .map(r -> new WaterCare.Result(
                                Objects.requireNonNullElse(text(r.parameter()), ""),
                                Objects.requireNonNullElse(text(r.value()), ""),
                                text(r.unit())))
                        .toList();
    }

    private static boolean cared(PhoneVisit.Water w) {
        return w.contactMinutes() != null
                || Stream.of(w.product(), w.strength(), w.flushed(), w.cleaned())
                        .map(WaterRecord::text)
                        .anyMatch(Objects::nonNull);
    }

    private static WaterCare.Hygiene hygiene(PhoneVisit.Water w) {
        return new WaterCare.Hygiene(
                text(w.product()),
                text(w.strength()),
                w.contactMinutes(),
                text(w.flushed()),
                w.isolated(),
                text(w.cleaned()));
    }

    /** The next sample as something left to do, with its date. */
    static Optional<RecordVisit.FollowUp> next(PhoneVisit.@Nullable Water w) {
        return Optional.ofNullable(w)
                .map(PhoneVisit.Water::next)
                .map(day -> new RecordVisit.FollowUp(WaterCare.NEXT_SAMPLE, day, false));
    }

    private static @Nullable String text(@Nullable String typed) {
        String clean = Text.clean(typed);
        return clean == null || clean.isEmpty() ? null : clean;
    }
}
