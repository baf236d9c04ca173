package app.ramkeeper.field;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.AsWritten;
import app.ramkeeper.visits.ReportId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Tells of a phone's visit what its report does not hold: the runs with the bucket, the steps, the hold points explained. */
@Service
@ForField
@Transactional(readOnly = true)
class WrittenOnPhone implements AsWritten {

    private final SentVisits sent;
    private final Checklists checklists;
    private final Fleet fleet;

    WrittenOnPhone(SentVisits sent, Checklists checklists, Fleet fleet) {
        this.sent = sent;
        this.checklists = checklists;
        this.fleet = fleet;
    }

    @Override
    public Optional<Told> of(ReportId report) {
        return sent.of(report).map(this::told).filter(told -> !told.isEmpty());
    }

    private Told told(PhoneVisit visit) {
        Optional<Checklists.Edition> list =
                Optional.ofNullable(visit.checklist()).flatMap(checklists::edition);
        return new Told(
                all(visit.readings()).stream().flatMap(r -> runs(r).stream()).toList(),
                list.map(Checklists.Edition::number).orElse(null),
                list.map(edition -> explained(edition, visit)).orElse(List.of()),
                all(visit.steps()).stream()
                        .map(s -> new Step(s.setting(), s.drive(), s.delivered()))
                        .toList());
    }

    private static List<Explained> explained(Checklists.Edition list, PhoneVisit visit) {
        Map<String, PhoneVisit.CheckItem> answers = Checklists.answers(visit);
        List<Explained> explained = new ArrayList<>();
        for (Checklists.Item item : list.items()) {
            PhoneVisit.CheckItem answer = answers.get(item.code());
            if (item.hold() && answer != null && !answer.done()) {
                explained.add(new Explained(item.text(), String.valueOf(answer.why())));
            }
        }
        return explained;
    }

    private Optional<Runs> runs(PhoneVisit.Reading reading) {
        PhoneVisit.Runs runs = reading.runs();
        Double litres = runs == null ? null : runs.litres();
        List<Double> seconds = runs == null ? List.of() : all(runs.seconds());
        if (litres == null
                || litres <= 0
                || seconds.isEmpty()
                || seconds.stream().anyMatch(s -> !(s > 0))) {
            return Optional.empty();
        }
        double[] flows = seconds.stream().mapToDouble(s -> litres / s * 60).toArray();
        double mean = Arrays.stream(flows).average().orElseThrow();
        return Optional.of(
                new Runs(name(reading.install()), reading.quantity(), litres, seconds, mean, spread(flows, mean)));
    }

    private static @Nullable Double spread(double[] flows, double mean) {
        double squares = Arrays.stream(flows).map(f -> (f - mean) * (f - mean)).sum();
        return flows.length < 2 ? null : Math.sqrt(squares / (flows.length - 1));
    }

    private String name(UUID install) {
        try {
            return fleet.install(new InstallId(install)).name();
        } catch (Missing gone) {
            return "";
        }
    }

    private static <T> List<T> all(@Nullable List<T> items) {
        return items == null ? List.of() : items;
    }
}
