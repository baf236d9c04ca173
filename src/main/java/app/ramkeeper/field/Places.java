package app.ramkeeper.field;

import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.visits.ReportView;
import app.ramkeeper.visits.WorkOutcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A report install by install, so that what was read at one is not taken for the other's. */
final class Places {

    private Places() {}

    /**
     * What was found, done, fitted and measured at one place.
     *
     * @param name of the install; absent for the site as a whole
     */
    public record Place(
            @Nullable String name,
            List<ReportView.Finding> findings,
            List<ReportView.Work> works,
            List<ReportView.Part> parts,
            List<ReportView.Reading> readings) {

        public List<ReportView.Work> done() {
            return works.stream()
                    .filter(w -> w.outcome() != WorkOutcome.COULD_NOT)
                    .toList();
        }

        public List<ReportView.Work> undone() {
            return works.stream()
                    .filter(w -> w.outcome() == WorkOutcome.COULD_NOT)
                    .toList();
        }
    }

    /** The site as a whole, if something was found there, then each install by name. */
    static List<Place> of(ReportView report) {
        Map<InstallId, String> installs = new LinkedHashMap<>();
        report.works().forEach(w -> installs.putIfAbsent(w.install(), w.installName()));
        report.readings().forEach(r -> installs.putIfAbsent(r.install(), r.installName()));
        report.parts().forEach(p -> installs.putIfAbsent(p.install(), p.installName()));
        report.findings().forEach(f -> {
            if (f.install() != null && f.installName() != null) {
                installs.putIfAbsent(f.install(), f.installName());
            }
        });
        List<Place> places = new ArrayList<>();
        List<ReportView.Finding> whole =
                report.findings().stream().filter(f -> f.install() == null).toList();
        if (!whole.isEmpty()) {
            places.add(new Place(null, whole, List.of(), List.of(), List.of()));
        }
        installs.entrySet().stream()
                .sorted(Map.Entry.comparingByValue())
                .forEach(install -> places.add(place(report, install.getKey(), install.getValue())));
        return places;
    }

    private static Place place(ReportView report, InstallId id, String name) {
        return new Place(
                name,
                at(report.findings().stream(), id, ReportView.Finding::install),
                at(report.works().stream(), id, ReportView.Work::install),
                at(report.parts().stream(), id, ReportView.Part::install),
                at(report.readings().stream(), id, ReportView.Reading::install));
    }

    private static <T> List<T> at(Stream<T> items, InstallId install, Function<T, @Nullable InstallId> of) {
        return items.filter(item -> Objects.equals(of.apply(item), install)).toList();
    }
}
