package app.ramkeeper.desk;

import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForAll;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.identity.Role;
import app.ramkeeper.upkeep.Upkeep;
import app.ramkeeper.visits.FieldDays;
import app.ramkeeper.web.IntervalBar;
import app.ramkeeper.web.Say;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.security.access.prepost.PreAuthorize;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Each role's first page answers that role's question without a click; who holds several roles sees several. */
@Controller
class HomeController {

    private static final int SITES_SHOWN = 20;

    private final OfficeDesk office;
    private final TechnicianDay technician;
    private final ManagerDesk manager;
    private final AdministratorDesk administrator;
    private final FieldDays fieldDays;
    private final Upkeep upkeep;
    private final Say say;
    private final Clock clock;

    HomeController(
            OfficeDesk office,
            TechnicianDay technician,
            ManagerDesk manager,
            AdministratorDesk administrator,
            FieldDays fieldDays,
            Upkeep upkeep,
            Say say,
            Clock clock) {
        this.office = office;
        this.technician = technician;
        this.manager = manager;
        this.administrator = administrator;
        this.fieldDays = fieldDays;
        this.upkeep = upkeep;
        this.say = say;
        this.clock = clock;
    }

    @GetMapping("/")
    @ForAll
    String home(@AuthenticationPrincipal CurrentUser user, Model model) {
        model.addAttribute("user", user);
        if (user.is(Role.TECHNICIAN)) {
            day(user, say.today(), model);
        }
        if (user.is(Role.OFFICE)) {
            office(model);
        }
        if (user.is(Role.MANAGER)) {
            manager(model);
        }
        if (user.is(Role.ADMINISTRATOR)) {
            model.addAttribute("toMend", administrator.toMend());
        }
        return "desk/home";
    }

    @GetMapping("/my-day")
    @PreAuthorize("hasRole('TECHNICIAN')")
    String myDay(
            @AuthenticationPrincipal CurrentUser user,
            @RequestParam(required = false) @DateTimeFormat(iso = DateTimeFormat.ISO.DATE) LocalDate day,
            Model model) {
        day(user, day == null ? say.today() : day, model);
        return "desk/my-day";
    }

    private void day(CurrentUser user, LocalDate day, Model model) {
        List<TechnicianDay.Stop> stops = technician.stops(user.person(), day);
        model.addAttribute("day", day);
        model.addAttribute("stops", stops);
        model.addAttribute(
                "fieldDay", fieldDays.today(new PersonId(user.person())).orElse(null));
        model.addAttribute(
                "next",
                stops.stream()
                        .filter(stop -> stop.state().equals("PLANNED"))
                        .findFirst()
                        .orElse(null));
        model.addAttribute("bring", stops.isEmpty() ? List.of() : technician.bring(user.person(), day));
        model.addAttribute("ahead", technician.ahead(user.person(), day));
    }

    private void office(Model model) {
        model.addAttribute("notBack", office.notBack());
        model.addAttribute("openCalls", office.openCalls());
        List<OfficeDesk.MustGo> mustGo = office.mustGo(SITES_SHOWN);
        model.addAttribute("mustGo", mustGo.stream().map(this::withBar).toList());
        model.addAttribute("mustGoSites", mustGo.isEmpty() ? 0 : mustGo.get(0).sites());
        model.addAttribute("now", clock.instant());
        model.addAttribute("promises", office.promises());
        model.addAttribute("week", office.week());
        model.addAttribute("toSettle", office.toSettle());
        model.addAttribute("consentsDue", office.consentsDue());
    }

    private void manager(Model model) {
        if (!model.containsAttribute("notBack")) {
            model.addAttribute("notBack", manager.notBack());
        }
        model.addAttribute("overdueKinds", upkeep.overdueByKind());
        model.addAttribute("worst", manager.worst().stream().map(this::withBar).toList());
        model.addAttribute("returnVisits", manager.returnVisits());
        model.addAttribute("months", manager.months());
        model.addAttribute("response", manager.response());
    }

    /** A row with its interval bar. */
    public record Barred<T>(T row, IntervalBar bar) {}

    private Barred<OfficeDesk.MustGo> withBar(OfficeDesk.MustGo row) {
        return new Barred<>(row, IntervalBar.of(row.from(), row.dueOn(), say.today()));
    }

    private Barred<ManagerDesk.Worst> withBar(ManagerDesk.Worst row) {
        return new Barred<>(row, IntervalBar.of(row.from(), row.dueOn(), say.today()));
    }
}
