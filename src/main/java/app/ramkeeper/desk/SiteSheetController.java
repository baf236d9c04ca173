package app.ramkeeper.desk;

import app.ramkeeper.field.Pins;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallCard;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.SiteCard;
import app.ramkeeper.fleet.SiteId;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.upkeep.DueTask;
import app.ramkeeper.upkeep.Upkeep;
import app.ramkeeper.visits.SiteNow;
import app.ramkeeper.visits.VisitHistory;
import app.ramkeeper.visits.VisitInWords;
import app.ramkeeper.visits.WaterRecords;
import app.ramkeeper.web.IntervalBar;
import app.ramkeeper.web.Say;
import app.ramkeeper.web.Slice;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/** The pages a technician reads before driving: the site sheet, and the story of an install. */
@Controller
@ForField
class SiteSheetController {

    private static final int LAST_VISITS = 3;
    private static final int LAST_SAMPLES = 3;

    private final Fleet fleet;
    private final VisitHistory visits;
    private final InstallHistoryQuery histories;
    private final Upkeep upkeep;
    private final WaterRecords water;
    private final Pins pins;
    private final Say say;

    SiteSheetController(
            Fleet fleet,
            VisitHistory visits,
            InstallHistoryQuery histories,
            Upkeep upkeep,
            WaterRecords water,
            Pins pins,
            Say say) {
        this.fleet = fleet;
        this.visits = visits;
        this.histories = histories;
        this.upkeep = upkeep;
        this.water = water;
        this.pins = pins;
        this.say = say;
    }

    @GetMapping("/sites/{id}/sheet")
    String sheet(
            @PathVariable UUID id,
            @RequestParam(required = false) @Nullable String after,
            @AuthenticationPrincipal @Nullable CurrentUser user,
            Model model) {
        SiteCard site = fleet.site(new SiteId(id));
        List<InstallCard> installs = fleet.installsOf(site.id());
        model.addAttribute("site", site);
        model.addAttribute("closed", site.closedOn(say.today()));
        model.addAttribute("wayThere", WayThere.of(site));
        model.addAttribute("installs", installs);
        SiteNow now = visits.now(site.id());
        model.addAttribute("pictures", now.pictures());
        model.addAttribute("gate", now.gate());
        model.addAttribute("water", water.of(site.id(), LAST_SAMPLES));
        List<UUID> pinned = user == null ? List.of() : pins.of(new PersonId(user.person()));
        model.addAttribute("pinned", pinned.contains(id));
        model.addAttribute("pins", pinned.size());
        model.addAttribute("mostPins", Pins.MOST);
        model.addAttribute("readings", ReadingsAgainstBaseline.of(installs, now.readings()));
        model.addAttribute("followUps", now.followUps());
        model.addAttribute("planned", now.planned());
        List<DueTask> due =
                upkeep.tasksAt(site.id()).stream().filter(DueTask::presses).toList();
        model.addAttribute("due", due.stream().map(this::withBar).toList());
        model.addAttribute("bring", upkeep.partsFor(due));
        Slice<VisitInWords> story = visits.ofSite(site.id(), after);
        model.addAttribute("story", story);
        if (after == null) {
            model.addAttribute(
                    "lastVisits", story.rows().stream().limit(LAST_VISITS).toList());
        }
        return "desk/sheet";
    }

    /** A task with its interval bar. */
    public record DueHere(DueTask task, IntervalBar bar) {}

    private DueHere withBar(DueTask task) {
        return new DueHere(task, IntervalBar.of(task.from(), task.dueOn(), say.today()));
    }

    @GetMapping("/installs/{id}/history")
    String history(@PathVariable UUID id, @RequestParam(required = false) @Nullable String after, Model model) {
        InstallCard install = fleet.install(new InstallId(id));
        InstallHistory history = histories.of(install.id().value(), after);
        FlowPlots plots = new FlowPlots(history, say.today());
        model.addAttribute("install", install);
        model.addAttribute("history", history);
        model.addAttribute(
                "measuredNewestFirst",
                history.measured().stream()
                        .sorted((one, other) -> other.on().compareTo(one.on()))
                        .toList());
        model.addAttribute("delivered", plots.delivered());
        model.addAttribute("efficiency", plots.efficiency());
        return "desk/history";
    }
}
