package app.ramkeeper.field;

import app.ramkeeper.shared.Text;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.WaterCare;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
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
        List<WaterCare.Sample> samples = samples(w)
                .filter(WaterRecord::said)
                .map(s -> sample(s, w.takenBy(), on))
                .toList();
        WaterCare.Hygiene hygiene = cared(w) ? hygiene(w) : null;
        return samples.isEmpty() && hygiene == null ? null : new WaterCare(samples, hygiene);
    }

    /** The first sample stands in the record itself, as older pages write it. */
    private static Stream<PhoneVisit.WaterSample> samples(PhoneVisit.Water w) {
        PhoneVisit.WaterSample first = new PhoneVisit.WaterSample(
                w.sample(), w.where(), w.result(), w.takenTime(), w.laboratory(), w.results(), w.next());
        List<PhoneVisit.WaterSample> more = w.more() == null ? List.of() : w.more();
        return Stream.concat(Stream.of(first), more.stream());
    }

    private static boolean said(PhoneVisit.WaterSample s) {
        return s.next() != null
                || !results(s).isEmpty()
                || Stream.of(s.sample(), s.where(), s.result(), s.laboratory())
                        .map(WaterRecord::text)
                        .anyMatch(Objects::nonNull);
    }

    private static WaterCare.Sample sample(PhoneVisit.WaterSample s, @Nullable String by, LocalDate on) {
        return new WaterCare.Sample(
                text(s.sample()),
                text(s.where()),
                on,
                s.takenTime(),
                text(by),
                text(s.laboratory()),
                text(s.result()),
                s.next(),
                results(s));
    }

    private static List<WaterCare.Result> results(PhoneVisit.WaterSample s) {
        return s.results() == null
                ? List.of()
                : s.results().stream()
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
                w.isolated() ? null : text(w.notIsolated()),
                text(w.cleaned()));
    }

    /** The next samples as things left to do, each day once. */
    static List<RecordVisit.FollowUp> next(PhoneVisit.@Nullable Water w) {
        return w == null
                ? List.of()
                : samples(w)
                        .map(PhoneVisit.WaterSample::next)
                        .filter(Objects::nonNull)
                        .distinct()
                        .map(day -> new RecordVisit.FollowUp(WaterCare.NEXT_SAMPLE, day, false))
                        .toList();
    }

    private static @Nullable String text(@Nullable String typed) {
        String clean = Text.clean(typed);
        return clean == null || clean.isEmpty() ? null : clean;
    }
}
