package app.ramkeeper.visits.plan;

import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.SiteCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.shared.Conflict;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.AskedTask;
import app.ramkeeper.visits.AskedTasks;
import app.ramkeeper.visits.PlanVisit;
import app.ramkeeper.visits.ReportRefused;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitId;
import app.ramkeeper.visits.VisitKind;
import app.ramkeeper.visits.Visits;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Plans a visit and changes the plan. */
@Controller
@ForOffice
class PlanPages {

    private static final String VIEW = "visits/plan";
    private static final int LOOK_AHEAD_DAYS = 30;

    private final PlanPagesQuery query;
    private final Visits visits;
    private final VisitHistory history;
    private final AskedTasks tasks;
    private final Fleet fleet;
    private final People people;
    private final Clock clock;

    PlanPages(
            PlanPagesQuery query,
            Visits visits,
            VisitHistory history,
            AskedTasks tasks,
            Fleet fleet,
            People people,
            Clock clock) {
        this.query = query;
        this.visits = visits;
        this.history = history;
        this.tasks = tasks;
        this.fleet = fleet;
        this.people = people;
        this.clock = clock;
    }

    @GetMapping("/visits/new")
    String fresh(
            @RequestParam(required = false) @Nullable UUID site,
            @RequestParam(name = "task", required = false) @Nullable List<UUID> picked,
            @RequestParam(required = false) @Nullable String q,
            Model model) {
        List<AskedTask> asked = picked == null || picked.isEmpty() ? List.of() : tasks.byId(picked);
        Map<SiteId, List<AskedTask>> bySite =
                asked.stream().collect(Collectors.groupingBy(AskedTask::site, LinkedHashMap::new, Collectors.toList()));
        if (bySite.size() > 1) {
            model.addAttribute(
                    "bySite",
                    bySite.entrySet().stream()
                            .map(e -> new TasksOfSite(fleet.site(e.getKey()).name(), e.getValue()))
                            .toList());
            return "visits/plan-sites";
        }
        if (site == null && asked.isEmpty()) {
            model.addAttribute("q", q);
            model.addAttribute("found", q == null || q.isBlank() ? List.of() : fleet.search(q, 8));
            return "visits/plan-search";
        }
        SiteId at = site != null ? new SiteId(site) : asked.get(0).site();
        TypedForm form = new TypedForm().set("kind", VisitKind.SERVICE).set("minutes", minutes(asked));
        asked.forEach(task -> form.add("task", task.task().toString()));
        return show(model, form, fleet.site(at), null);
    }

    /** Picked tasks of one site, when tasks of several were picked. */
    public record TasksOfSite(String name, List<AskedTask> tasks) {}

    private static int minutes(List<AskedTask> asked) {
        int sum = asked.stream().mapToInt(AskedTask::minutes).sum();
        return Math.max(30, Math.min(sum, 1440));
    }

    @PostMapping("/visits")
    ModelAndView plan(
            @RequestParam UUID site,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        SiteCard at = fleet.site(new SiteId(site));
        PlanVisit plan = read(form, at.id(), picked(form), minutes(tasks.byId(ids(form))));
        VisitId[] made = new VisitId[1];
        if (!tried(form, plan, p -> made[0] = visits.plan(p))) {
            return Saving.again(show(model, form, at, null), model);
        }
        flash.addFlashAttribute("saved", Saved.of("visits.saved.planned"));
        return new ModelAndView(
                "redirect:/visits/" + Objects.requireNonNull(made[0]).value());
    }

    @GetMapping("/visits/{id}/change")
    String change(@PathVariable UUID id, Model model) {
        PlanPagesQuery.Row visit = query.byId(id).orElseThrow(() -> new Missing("visit", id));
        TypedForm form = filled(visit);
        query.tasks(id).forEach(task -> form.add("task", task.toString()));
        return show(model, form, fleet.site(new SiteId(visit.site())), visit);
    }

    private static TypedForm filled(PlanPagesQuery.Row visit) {
        return new TypedForm()
                .set("kind", visit.kind())
                .set("on", visit.on())
                .set("from", visit.from())
                .set("minutes", visit.minutes())
                .set(
                        "lead",
                        visit.peopleIds().isEmpty() ? null : visit.peopleIds().get(0))
                .set("second", visit.peopleIds().size() > 1 ? visit.peopleIds().get(1) : null)
                .set("note", visit.note())
                .set("version", visit.version());
    }

    @PostMapping("/visits/{id}/change")
    ModelAndView changed(
            @PathVariable UUID id,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        PlanPagesQuery.Row visit = query.byId(id).orElseThrow(() -> new Missing("visit", id));
        TypedForm form = new TypedForm(posted);
        SiteId site = new SiteId(visit.site());
        PlanVisit plan = read(form, site, picked(form), visit.minutes());
        BigDecimal version = form.number("version");
        int seen = version == null ? -1 : version.intValue();
        boolean[] lost = {false};
        if (!tried(form, plan, p -> lost[0] = !visits.changeWithTasks(new VisitId(id), seen, p))) {
            return Saving.again(show(model, form, fleet.site(site), visit), model);
        }
        if (lost[0]) {
            form.set("version", visit.version());
            model.addAttribute("lost", visit);
            ModelAndView again = Saving.again(show(model, form, fleet.site(site), visit), model);
            again.setStatus(org.springframework.http.HttpStatus.CONFLICT);
            return again;
        }
        flash.addFlashAttribute("saved", Saved.of("visits.saved.changed"));
        return new ModelAndView("redirect:/visits/" + id);
    }

    private String show(Model model, TypedForm form, SiteCard site, PlanPagesQuery.@Nullable Row visit) {
        LocalDate today = LocalDate.now(clock);
        model.addAttribute("form", form);
        model.addAttribute("site", site);
        model.addAttribute("visit", visit);
        List<AskedTask> offered = tasks.openAt(site.id(), today.plusDays(LOOK_AHEAD_DAYS));
        List<UUID> ids = ids(form);
        List<AskedTask> extra = tasks.byId(ids).stream()
                .filter(t -> offered.stream().noneMatch(o -> o.task().equals(t.task())))
                .toList();
        model.addAttribute(
                "offered", Stream.concat(extra.stream(), offered.stream()).toList());
        model.addAttribute("goes", People.choices(people.fieldPeopleOn(today, going(form, visit))));
        model.addAttribute("planned", history.now(site.id()).planned());
        return VIEW;
    }

    /** Who goes already, or was picked, is named even if they no longer go out. */
    private static Set<UUID> going(TypedForm form, PlanPagesQuery.@Nullable Row visit) {
        return Stream.concat(
                        Stream.of(form.value("lead"), form.value("second")),
                        visit == null ? Stream.of() : visit.peopleIds().stream())
                .filter(PlanPages::isId)
                .map(UUID::fromString)
                .collect(Collectors.toSet());
    }

    private static boolean isId(String id) {
        return id.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}");
    }

    private static List<UUID> ids(TypedForm form) {
        return form.values("task").stream()
                .filter(PlanPages::isId)
                .map(UUID::fromString)
                .toList();
    }

    private List<PlanVisit.Task> picked(TypedForm form) {
        return tasks.byId(ids(form)).stream()
                .map(t -> new PlanVisit.Task(t.task(), t.install(), t.kind()))
                .toList();
    }

    /** What was typed; the minutes count as typed unless they are as the page offered them. */
    private static @Nullable PlanVisit read(TypedForm form, SiteId site, List<PlanVisit.Task> asked, int offered) {
        VisitKind kind = form.choice("kind", VisitKind.class);
        BigDecimal minutes = form.number("minutes");
        if (kind == null) {
            form.problem("kind", "Say what the visit is for.");
        }
        if (minutes == null
                || minutes.stripTrailingZeros().scale() > 0
                || minutes.abs().intValue() > 100_000) {
            form.problem("minutes", "Give whole minutes, between 5 and 1440.");
        }
        List<PersonId> people = Stream.of(form.uuid("lead"), form.uuid("second"))
                .filter(Objects::nonNull)
                .map(PersonId::new)
                .toList();
        LocalDate on = form.date("on");
        java.time.LocalTime from = form.time("from");
        String note = form.text("note", 10_000);
        if (form.hasProblems() || kind == null || minutes == null) {
            return null;
        }
        return new PlanVisit(
                site, kind, on, from, minutes.intValue(), people, asked, note, minutes.intValue() != offered);
    }

    private static boolean tried(
            TypedForm form, @Nullable PlanVisit plan, java.util.function.Consumer<PlanVisit> work) {
        if (plan == null) {
            return false;
        }
        try {
            work.accept(plan);
            return true;
        } catch (ReportRefused refused) {
            refused.problems()
                    .forEach(p -> form.problem(p.path().equals("people") ? "second" : p.path(), p.sentence()));
        } catch (Conflict taken) {
            form.problem("from", String.valueOf(taken.getMessage()));
        }
        return false;
    }
}
