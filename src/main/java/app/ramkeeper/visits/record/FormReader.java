package app.ramkeeper.visits.record;

import app.ramkeeper.catalogue.PartId;
import app.ramkeeper.catalogue.TaskKindId;
import app.ramkeeper.fleet.ComponentPosition;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PumpId;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Measured;
import app.ramkeeper.shared.Unit;
import app.ramkeeper.visits.DoneBy;
import app.ramkeeper.visits.Reason;
import app.ramkeeper.visits.RecordVisit;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.ReportOutcome;
import app.ramkeeper.visits.ReportSource;
import app.ramkeeper.visits.Symptom;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.WorkOutcome;
import app.ramkeeper.visits.form.TypedForm;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads the posted form into a command; what cannot be read is noted in the form beside its field. */
final class FormReader {

    /** Stands for the site as a whole where a finding asks for the install. */
    static final String WHOLE_SITE = "SITE";

    private final TypedForm form;
    private final List<UUID> installs;
    private final ZoneId zone;

    /** Prefixes of the fields that each person, work, reading, finding and part came from, for sentences of the recorder. */
    final List<String> people = new ArrayList<>();

    final List<String> works = new ArrayList<>();

    final List<String> readings = new ArrayList<>();
    final List<String> findings = new ArrayList<>();
    final List<String> parts = new ArrayList<>();
    final List<String> lefts = new ArrayList<>();

    private final PartsAsked asked;

    FormReader(TypedForm form, List<UUID> installs, ZoneId zone, PartsAsked asked) {
        this.form = form;
        this.installs = installs;
        this.zone = zone;
        this.asked = asked;
    }

    /** The command as far as it can be read, the problems noted in the form; null if there is none without what is missing. */
    @Nullable
    RecordVisit read(SiteId site, PersonId writer) {
        UUID id = form.uuid("id");
        LocalDate on = form.date("attendedOn");
        VisitKind kind = form.choice("kind", VisitKind.class);
        ReportOutcome outcome = form.choice("outcome", ReportOutcome.class);
        require(on, "attendedOn", "Give the day of the visit.");
        require(kind, "kind", "Say what the visit was for.");
        require(outcome, "outcome", "Say how the visit went.");
        List<RecordVisit.Work> work = works(outcome == ReportOutcome.COULD_NOT);
        List<RecordVisit.Reading> measured = readings();
        List<RecordVisit.Finding> found = findings();
        List<RecordVisit.PartUsed> used = parts();
        if (on != null) {
            asked.answer(work, works, used, parts, on);
        }
        List<RecordVisit.FollowUp> left = followUps();
        if (id == null) {
            form.problem("id", "This page is incomplete. Open the form again.");
        }
        List<PersonId> present = people(writer);
        UUID visit = form.uuid("visit");
        UUID supersedes = form.uuid("supersedes");
        String note = form.text("note", 10_000);
        String customer = form.text("customerName", 200);
        Instant[] times = on == null ? new Instant[3] : times(on);
        if (id == null || on == null || kind == null || outcome == null) {
            return null;
        }
        return new RecordVisit(
                new ReportId(id),
                visit == null ? null : new VisitId(visit),
                site,
                kind,
                supersedes == null ? null : new ReportId(supersedes),
                on,
                times[0],
                times[1],
                times[2],
                present,
                outcome,
                outcome == ReportOutcome.DONE ? null : form.choice("reason", Reason.class),
                note,
                form.ticked("nobodyThere"),
                customer,
                ReportSource.FORM,
                work,
                measured,
                found,
                used,
                photos(),
                left,
                null,
                null);
    }

    private void require(@Nullable Object value, String name, String sentence) {
        if (value == null) {
            form.problem(name, sentence);
        }
    }

    private List<PersonId> people(PersonId writer) {
        List<PersonId> found = new ArrayList<>();
        UUID lead = form.uuid("lead");
        add(found, people, "lead", lead == null ? writer : new PersonId(lead));
        Stream<String> others = IntStream.range(0, form.rows("others", 0)).mapToObj(i -> "other[" + i + "]");
        Stream.concat(Stream.of("second"), others).forEach(field -> {
            UUID person = form.uuid(field);
            if (person != null && !found.contains(new PersonId(person))) {
                add(found, people, field, new PersonId(person));
            }
        });
        return found;
    }

    /** Set out, arrived, left. A time before the one that comes first is of the next day only for leaving after midnight. */
    private Instant[] times(LocalDate on) {
        LocalTime start = form.time("startedAt");
        LocalTime arrive = form.time("arrivedAt");
        LocalTime leave = form.time("leftAt");
        return new Instant[] {at(on, start), at(on, arrive), at(on, leave)};
    }

    private @Nullable Instant at(LocalDate on, @Nullable LocalTime time) {
        return time == null ? null : on.atTime(time).atZone(zone).toInstant();
    }

    private List<RecordVisit.Work> works(boolean inVain) {
        List<RecordVisit.Work> found = new ArrayList<>();
        boolean asUsual = form.ticked("asUsual");
        boolean asked = !form.value("visit").isEmpty();
        for (int i = 0; i < form.rows("tasks", 0); i++) {
            String field = "task[" + i + "]";
            WorkOutcome outcome = form.choice(field + ".outcome", WorkOutcome.class);
            if (outcome == null && !inVain && !asUsual && !asked) {
                continue; // nobody planned it: it stays as it is
            }
            if (outcome == null && !inVain && !asUsual) {
                form.problem(field + ".outcome", "Say what became of this task, or tick “all as usual”.");
            } else {
                WorkOutcome said = outcome != null ? outcome : inVain ? WorkOutcome.COULD_NOT : WorkOutcome.DONE;
                add(found, works, field, work(field, said, DoneBy.US));
            }
        }
        for (int i = 0; i < form.rows("extras", 0); i++) {
            String field = "extra[" + i + "]";
            if (!form.value(field + ".kind").isEmpty()) {
                WorkOutcome outcome = form.choice(field + ".outcome", WorkOutcome.class);
                DoneBy by = form.choice(field + ".by", DoneBy.class);
                add(
                        found,
                        works,
                        field,
                        work(field, outcome == null ? WorkOutcome.DONE : outcome, by == null ? DoneBy.US : by));
            }
        }
        return found;
    }

    private RecordVisit.@Nullable Work work(String field, WorkOutcome outcome, DoneBy by) {
        InstallId install = install(field);
        UUID kind = form.uuid(field + ".kind");
        UUID pump = form.uuid(field + ".pump");
        Reason reason = form.choice(field + ".reason", Reason.class);
        if (outcome == WorkOutcome.COULD_NOT && reason == null) {
            reason = form.choice("reason", Reason.class);
            require(reason, field + ".reason", "Say why this task could not be done.");
        }
        LocalDate again = form.date(field + ".lookAgainOn");
        if (install == null || kind == null) {
            return null;
        }
        return new RecordVisit.Work(
                install,
                pump == null ? null : new PumpId(pump),
                new TaskKindId(kind),
                form.uuid(field + ".task"),
                outcome,
                outcome == WorkOutcome.COULD_NOT ? reason : null,
                outcome == WorkOutcome.INSPECTED_GOOD ? again : null,
                by,
                form.ticked(field + ".about"),
                form.text(field + ".note"));
    }

    private @Nullable InstallId install(String field) {
        UUID install = form.uuid(field + ".install");
        if (install == null && installs.size() == 1) {
            return new InstallId(installs.get(0));
        }
        require(install, field + ".install", "Say at which pump.");
        return install == null ? null : new InstallId(install);
    }

    /** The install it names. A finding may be about the whole site, if that is said; one at the only install is about that. */
    private @Nullable InstallId installIfAny(String field) {
        if (form.value(field + ".install").equals(WHOLE_SITE)) {
            return null;
        }
        UUID install = form.uuid(field + ".install");
        if (install == null && installs.size() == 1) {
            return new InstallId(installs.get(0));
        }
        if (install == null && installs.size() > 1) {
            form.problem(field + ".install", "Say at which pump this was, or that it was the site as a whole.");
        }
        return install == null ? null : new InstallId(install);
    }

    private List<RecordVisit.Reading> readings() {
        List<RecordVisit.Reading> found = new ArrayList<>();
        for (UUID install : installs) {
            for (ReadingField field : ReadingField.of(install, form)) {
                add(found, readings, field.name(), reading(field));
            }
        }
        return found;
    }

    private RecordVisit.@Nullable Reading reading(ReadingField field) {
        String name = field.name();
        RecordVisit.Bucket bucket = bucket(field);
        BigDecimal value = form.number(name + ".value");
        Unit unit = form.choice(name + ".unit", Unit.class);
        if (bucket != null) {
            value = perMinute(bucket);
            unit = Unit.LITRE_PER_MINUTE;
        }
        if (value == null) {
            return null;
        }
        UUID pump = form.uuid(name + ".pump");
        String why = form.text(name + ".notComparable", 500);
        boolean shut = field.quantity() == app.ramkeeper.visits.Quantity.DELIVERED_FLOW
                && value.signum() == 0
                && form.value("float." + field.install()).equals("SHUT");
        return new RecordVisit.Reading(
                new InstallId(field.install()),
                pump == null ? null : new PumpId(pump),
                field.quantity(),
                field.place(),
                new Measured(value, unit == null ? field.quantity().unit() : unit),
                bucket,
                form.uuid(name + ".instrument"),
                form.ticked(name + ".asRead"),
                shut && why == null ? "Float or valve at the tank shut" : why);
    }

    /** Litres over seconds as l/min; the page shows the same by script. */
    static BigDecimal perMinute(RecordVisit.Bucket bucket) {
        return bucket.litres().multiply(BigDecimal.valueOf(60)).divide(bucket.seconds(), new MathContext(4));
    }

    private RecordVisit.@Nullable Bucket bucket(ReadingField field) {
        if (!field.quantity().isFlow()) {
            return null;
        }
        BigDecimal litres = form.number(field.name() + ".litres");
        BigDecimal seconds = form.number(field.name() + ".seconds");
        if (litres == null && seconds == null) {
            return null;
        }
        if (litres == null || seconds == null || seconds.signum() <= 0 || litres.signum() < 0) {
            form.problem(
                    field.name() + (litres == null ? ".litres" : ".seconds"),
                    "Bucket and watch: give the litres caught and the seconds it took.");
            return null;
        }
        return new RecordVisit.Bucket(litres, seconds);
    }

    private List<RecordVisit.Finding> findings() {
        List<RecordVisit.Finding> found = new ArrayList<>();
        for (int i = 0; i < form.rows("findings", 0); i++) {
            String field = "finding[" + i + "]";
            Symptom symptom = form.choice(field + ".symptom", Symptom.class);
            String cause = form.text(field + ".cause");
            String action = form.text(field + ".action");
            if (symptom != null) {
                add(found, findings, field, new RecordVisit.Finding(installIfAny(field), symptom, cause, action));
            } else if (cause != null || action != null) {
                form.problem(field + ".symptom", "Say what was not right.");
            }
        }
        return found;
    }

    private List<RecordVisit.PartUsed> parts() {
        List<RecordVisit.PartUsed> found = new ArrayList<>();
        for (int i = 0; i < form.rows("parts", 0); i++) {
            String field = "part[" + i + "]";
            UUID part = form.uuid(field + ".part");
            String text = form.text(field + ".text", 200);
            BigDecimal quantity = form.number(field + ".quantity");
            if (part == null && text == null) {
                continue;
            }
            InstallId install = install(field);
            UUID pump = form.uuid(field + ".pump");
            if (install != null) {
                add(
                        found,
                        parts,
                        field,
                        new RecordVisit.PartUsed(
                                install,
                                pump == null ? null : new PumpId(pump),
                                part == null ? null : new PartId(part),
                                part == null ? text : null,
                                form.choice(field + ".position", ComponentPosition.class),
                                quantity == null ? BigDecimal.ONE : quantity,
                                form.text(field + ".batch", 60)));
            }
        }
        return found;
    }

    private List<RecordVisit.FollowUp> followUps() {
        List<RecordVisit.FollowUp> found = new ArrayList<>();
        for (int i = 0; i < form.rows("lefts", 0); i++) {
            String field = "left[" + i + "]";
            String text = form.text(field + ".text");
            LocalDate due = form.date(field + ".dueOn");
            if (text != null) {
                add(found, lefts, field, new RecordVisit.FollowUp(text, due, form.ticked(field + ".promised")));
            } else if (due != null) {
                form.problem(field + ".text", "Say what is left to do.");
            }
        }
        return found;
    }

    private List<RecordVisit.Photo> photos() {
        return form.values("photo").stream()
                .distinct()
                .map(sha -> new RecordVisit.Photo(sha, form.text("caption." + sha, 300), instant("taken." + sha)))
                .toList();
    }

    private @Nullable Instant instant(String name) {
        try {
            return form.value(name).isEmpty() ? null : Instant.parse(form.value(name));
        } catch (java.time.DateTimeException unreadable) {
            return null;
        }
    }

    private static <T> void add(List<T> items, List<String> names, String name, @Nullable T item) {
        if (item != null) {
            items.add(item);
            names.add(name);
        }
    }
}
