package app.ramkeeper.field;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Measured;
import app.ramkeeper.shared.Text;
import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.Quantity;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.ReportSource;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.cfg.CoercionAction;
import tools.jackson.databind.cfg.CoercionInputShape;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.type.LogicalType;

/** Turns what a phone wrote into the one command by which reports come in. */
final class PhoneVisits {

    private static final Set<Quantity> OF_THE_PUMP = EnumSet.of(
            Quantity.DRIVE_FLOW,
            Quantity.DELIVERED_FLOW,
            Quantity.WASTE_FLOW,
            Quantity.BEAT_RATE,
            Quantity.DELIVERY_PRESSURE);

    private PhoneVisits() {}

    /** Reads what an older page or list leaves out as no and none; takes nothing for another type than it has, and no name twice. */
    static JsonMapper reader(JsonMapper json) {
        return json.rebuild()
                .disable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .withCoercionConfig(
                        LogicalType.Textual,
                        text -> Stream.of(
                                        CoercionInputShape.Boolean,
                                        CoercionInputShape.Integer,
                                        CoercionInputShape.Float)
                                .forEach(other -> text.setCoercion(other, CoercionAction.Fail)))
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .build();
    }

    /** @throws IllegalArgumentException if a text holds a control character */
    static RecordVisit command(PhoneVisit p, PersonId writer) {
        return new RecordVisit(
                new ReportId(p.id()),
                with(p.visit(), VisitId::new),
                new SiteId(p.site()),
                p.kind(),
                null,
                p.on(),
                p.startedAt(),
                p.arrivedAt(),
                p.leftAt(),
                people(p, writer),
                p.outcome(),
                p.reason(),
                text(p.note()),
                p.nobodyThere(),
                text(p.customerName()),
                ReportSource.PHONE,
                all(p.works(), PhoneVisits::work),
                readings(p),
                all(p.findings(), PhoneVisits::finding),
                all(p.parts(), PhoneVisits::part),
                List.of(),
                followUps(p),
                WaterRecord.of(p.water(), p.on()),
                commissioned(p));
    }

    /** An older phone does not say which install it was; nothing is said of a visit that commissioned none. */
    private static RecordVisit.@Nullable Commissioned commissioned(PhoneVisit p) {
        String setting = text(p.leftSetting());
        boolean done = p.kind() == VisitKind.COMMISSIONING && p.outcome() == ReportOutcome.DONE;
        String pump = text(p.pump());
        return !done || (p.install() == null && setting == null && pump == null)
                ? null
                : new RecordVisit.Commissioned(with(p.install(), InstallId::new), setting, pump);
    }

    private static List<RecordVisit.FollowUp> followUps(PhoneVisit p) {
        List<RecordVisit.FollowUp> all = new ArrayList<>(all(p.followUps(), PhoneVisits::followUp));
        all.addAll(WaterRecord.next(p.water()));
        return all;
    }

    private static List<PersonId> people(PhoneVisit p, PersonId writer) {
        Set<PersonId> people = new LinkedHashSet<>();
        people.add(writer);
        all(p.people(), PersonId::new).forEach(people::add);
        return new ArrayList<>(people);
    }

    private static RecordVisit.Work work(PhoneVisit.Work w) {
        return new RecordVisit.Work(
                new InstallId(w.install()),
                with(w.pump(), PumpId::new),
                new TaskKindId(w.kind()),
                w.task(),
                w.outcome(),
                w.reason(),
                w.lookAgainOn(),
                w.by() == null ? DoneBy.US : w.by(),
                false,
                text(w.note()));
    }

    /** With the tank shut off the pump beats against its dead head: nothing read of it then can be compared. */
    private static List<RecordVisit.Reading> readings(PhoneVisit p) {
        Map<UUID, String> shut = new HashMap<>();
        for (PhoneVisit.Reading r : p.readings() == null ? List.<PhoneVisit.Reading>of() : p.readings()) {
            String why = text(r.notComparable());
            if (r.quantity() == Quantity.DELIVERED_FLOW && why != null) {
                shut.put(r.install(), why);
            }
        }
        return all(p.readings(), r -> reading(r, OF_THE_PUMP.contains(r.quantity()) ? shut.get(r.install()) : null));
    }

    private static RecordVisit.Reading reading(PhoneVisit.Reading r, @Nullable String shut) {
        String why = text(r.notComparable());
        return new RecordVisit.Reading(
                new InstallId(r.install()),
                with(r.pump(), PumpId::new),
                r.quantity(),
                r.place(),
                new Measured(r.value(), r.unit()),
                null,
                null,
                r.asRead(),
                why == null ? shut : why);
    }

    private static RecordVisit.Finding finding(PhoneVisit.Finding f) {
        return new RecordVisit.Finding(
                with(f.install(), InstallId::new), f.symptom(), text(f.cause()), text(f.action()));
    }

    private static RecordVisit.PartUsed part(PhoneVisit.Part u) {
        return new RecordVisit.PartUsed(
                new InstallId(u.install()),
                with(u.pump(), PumpId::new),
                with(u.part(), PartId::new),
                text(u.text()),
                u.position(),
                u.quantity(),
                text(u.batch()));
    }

    private static RecordVisit.FollowUp followUp(PhoneVisit.FollowUp f) {
        String said = text(f.text());
        return new RecordVisit.FollowUp(said == null ? "" : said, f.dueOn(), f.promised());
    }

    private static @Nullable String text(@Nullable String typed) {
        String clean = Text.clean(typed);
        return clean == null || clean.isEmpty() ? null : clean;
    }

    private static <T> @Nullable T with(@Nullable UUID id, Function<UUID, T> type) {
        return id == null ? null : type.apply(id);
    }

    private static <A, B> List<B> all(@Nullable List<A> items, Function<A, B> step) {
        return items == null ? List.of() : items.stream().map(step).toList();
    }
}
