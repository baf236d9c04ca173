package app.ramkeeper.visits.record;

import app.ramkeeper.fleet.FittedPump;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.visits.AskedTask;
import app.ramkeeper.visits.AskedTasks;
import app.ramkeeper.visits.ReportId;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.Say;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** What the form shows around its fields. */
@Component
class RecordScreen {

    private final Fleet fleet;
    private final AskedTasks tasks;
    private final VisitHistory history;
    private final VisitChoices choices;
    private final TaskParts parts;
    private final Say say;
    private final Clock clock;

    RecordScreen(
            Fleet fleet,
            AskedTasks tasks,
            VisitHistory history,
            VisitChoices choices,
            TaskParts parts,
            Say say,
            Clock clock) {
        this.parts = parts;
        this.clock = clock;
        this.fleet = fleet;
        this.tasks = tasks;
        this.history = history;
        this.choices = choices;
        this.say = say;
    }

    /** An asked task with the prefix of its fields. */
    public record Asked(String field, AskedTask task) {}

    /** The readings of one install. */
    public record Measured(
            InstallCard install, List<ReadingField> usual, List<ReadingField> more, List<Choice> pumps) {}

    /** Installs the form speaks of: those at work and, in a correction, those of the report, wherever they stand now. */
    List<InstallCard> installs(SiteId site, TypedForm form) {
        UUID corrected = form.uuid("supersedes");
        List<InstallCard> here = fleet.installsOf(site);
        if (corrected == null) {
            return here.stream().filter(i -> i.retiredOn() == null).toList();
        }
        List<InstallId> elsewhere = history.installsIn(new ReportId(corrected)).stream()
                .filter(id -> here.stream().noneMatch(install -> install.id().equals(id)))
                .toList();
        return Stream.concat(here.stream(), elsewhere.stream().map(fleet::install))
                .toList();
    }

    void show(Model model, TypedForm form, SiteCard site, CurrentUser user) {
        List<InstallCard> installs = installs(site.id(), form);
        model.addAttribute("form", form);
        model.addAttribute("site", site);
        model.addAttribute("installs", installs);
        model.addAttribute("asked", asked(form));
        model.addAttribute(
                "measured", installs.stream().map(i -> measured(i, form)).toList());
        model.addAttribute("last", last(site.id()));
        model.addAttribute(
                "installChoices",
                installs.stream()
                        .map(i -> new Choice(i.id().value().toString(), i.name()))
                        .toList());
        model.addAttribute("findingChoices", findingPlaces(installs));
        model.addAttribute("partsFor", partsFor(form, installs, user.person()));
        model.addAttribute("partChoices", choices.partsOnVan(user.person()));
        model.addAttribute("peopleChoices", choices.people());
        model.addAttribute("instrumentChoices", choices.instruments());
        model.addAttribute("taskKindChoices", choices.taskKinds());
    }

    private List<Choice> findingPlaces(List<InstallCard> installs) {
        return Stream.concat(
                        installs.stream().map(i -> new Choice(i.id().value().toString(), i.name())),
                        Stream.of(new Choice(FormReader.WHOLE_SITE, choices.said("visits.form.wholeSite"))))
                .toList();
    }

    /** What can be said of the part that went in, by the prefix of the task's fields; only for tasks that ask for one. */
    private Map<String, List<Choice>> partsFor(TypedForm form, List<InstallCard> installs, UUID person) {
        TypedForm quiet = form.copy();
        LocalDate said = quiet.date("attendedOn");
        UUID only = installs.size() == 1 ? installs.get(0).id().value() : null;
        Map<String, List<Choice>> found = new HashMap<>();
        Stream.concat(rows(form, "task", "tasks"), rows(form, "extra", "extras"))
                .forEach(field -> {
                    UUID kind = quiet.uuid(field + ".kind");
                    UUID install = quiet.uuid(field + ".install");
                    if (kind != null) {
                        found.put(
                                field,
                                parts.choices(new TaskParts.Task(
                                        kind,
                                        install == null ? only : install,
                                        quiet.uuid(field + ".pump"),
                                        said == null ? LocalDate.now(clock) : said,
                                        person)));
                    }
                });
        found.values().removeIf(List::isEmpty);
        return found;
    }

    private static Stream<String> rows(TypedForm form, String name, String count) {
        return IntStream.range(0, form.rows(count, 0)).mapToObj(i -> name + "[" + i + "]");
    }

    private List<Asked> asked(TypedForm form) {
        List<UUID> ids = new ArrayList<>();
        for (int i = 0; i < form.rows("tasks", 0); i++) {
            UUID id = form.uuid("task[" + i + "].task");
            if (id != null) {
                ids.add(id);
            }
        }
        Map<String, AskedTask> found = new HashMap<>();
        tasks.byId(ids).forEach(task -> found.put(task.task().toString(), task));
        List<Asked> rows = new ArrayList<>();
        for (int i = 0; i < form.rows("tasks", 0); i++) {
            AskedTask task = found.get(form.value("task[" + i + "].task"));
            if (task != null) {
                rows.add(new Asked("task[" + i + "]", task));
            }
        }
        return rows;
    }

    private Measured measured(InstallCard install, TypedForm form) {
        List<ReadingField> all = ReadingField.of(install.id().value(), form);
        List<FittedPump> pumps = install.pumps();
        return new Measured(
                install,
                all.stream().filter(ReadingField::usual).toList(),
                all.stream().filter(field -> !field.usual()).toList(),
                pumps.size() < 2
                        ? List.of()
                        : pumps.stream()
                                .map(p -> new Choice(
                                        p.id().value().toString(),
                                        p.serial() == null ? "pump " + p.placeNo() : p.placeNo() + ": " + p.serial()))
                                .toList());
    }

    /** The last value of each reading in words, by the prefix of its fields. */
    private Map<String, String> last(SiteId site) {
        Map<String, String> last = new HashMap<>();
        history.now(site)
                .readings()
                .forEach(l -> last.put(
                        "reading." + l.install().value() + "." + l.reading().quantity() + "."
                                + l.reading().place(),
                        "Last " + l.reading().value().toPlainString() + " "
                                + l.reading().unitSymbol() + ", "
                                + say.date(l.reading().on())));
        return last;
    }
}
