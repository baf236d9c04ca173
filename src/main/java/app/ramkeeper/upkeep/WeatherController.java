package app.ramkeeper.upkeep;

import app.ramkeeper.fleet.CatchmentId;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.Position;
import app.ramkeeper.identity.CurrentUser;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.upkeep.WeatherEvents.Area;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import app.ramkeeper.web.Say;
import jakarta.validation.Valid;
import jakarta.validation.constraints.AssertTrue;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PastOrPresent;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Records a flood or the like: first a look at how many installs it touches, then the step itself. */
@Controller
@ForOffice
class WeatherController {

    private static final String VIEW = "upkeep/weather-event";

    private final WeatherEvents events;
    private final Fleet fleet;
    private final FilterChoices choices;
    private final Say say;

    WeatherController(WeatherEvents events, Fleet fleet, FilterChoices choices, Say say) {
        this.events = events;
        this.fleet = fleet;
        this.choices = choices;
        this.say = say;
    }

    /** What the page posts: a valley, or a box as south, west, north, east. */
    public record WeatherForm(
            @NotNull @Size(max = 200) @Nullable String name,

            @NotNull @PastOrPresent @DateTimeFormat(iso = DateTimeFormat.ISO.DATE) @Nullable
            LocalDate on,

            @NotNull @DateTimeFormat(iso = DateTimeFormat.ISO.DATE) @Nullable
            LocalDate due,

            @NotNull @Nullable UUID kind,

            @Nullable UUID catchment,
            @Size(max = 100) @Nullable String box) {

        @AssertTrue(message = "{weather.due.early}")
        public boolean isDueAfter() {
            return on == null || due == null || !due.isBefore(on);
        }

        @AssertTrue(message = "{weather.where}")
        public boolean isSomewhere() {
            return (catchment == null) != (box == null) && (box == null || edges() != null);
        }

        private double @Nullable [] edges() {
            return new DueFilter(null, null, null, null, null, null, null, null, null, box, null, null).edges();
        }

        Area area() {
            double[] edges = edges();
            return catchment != null || edges == null
                    ? new Area(catchment == null ? null : new CatchmentId(catchment), null, null)
                    : new Area(null, new Position(edges[0], edges[1]), new Position(edges[2], edges[3]));
        }
    }

    @GetMapping("/weather-events")
    String list(Model model) {
        model.addAttribute("events", events.recent());
        return "upkeep/weather-events";
    }

    @GetMapping("/weather-events/new")
    String fresh(Model model) {
        LocalDate today = say.today();
        UUID flood = choices.kind("AFTER_FLOOD");
        model.addAttribute("weatherForm", new WeatherForm(null, today, today.plusDays(14), flood, null, null));
        return form(model);
    }

    @PostMapping("/weather-events")
    ModelAndView record(
            @Valid @ModelAttribute WeatherForm weatherForm,
            BindingResult errors,
            @RequestParam(required = false) @Nullable String sure,
            Model model,
            RedirectAttributes flash,
            @AuthenticationPrincipal CurrentUser user) {
        String name = weatherForm.name();
        LocalDate on = weatherForm.on();
        LocalDate due = weatherForm.due();
        UUID kind = weatherForm.kind();
        if (errors.hasErrors() || name == null || on == null || due == null || kind == null) {
            form(model);
            return Saving.again(VIEW, model);
        }
        if (sure == null) {
            model.addAttribute("touched", events.touched(weatherForm.area()).size());
            return new ModelAndView(form(model), model.asMap());
        }
        int installs = events.record(name, on, due, kind, weatherForm.area(), new PersonId(user.person()));
        flash.addFlashAttribute(
                "saved", Saved.of("upkeep.saved.recordedNowHaveThe", say.count(installs, "install"), say.date(due)));
        return new ModelAndView("redirect:/due?kind=" + kind);
    }

    private String form(Model model) {
        model.addAttribute("catchments", fleet.catchments());
        choices.addTo(model);
        return VIEW;
    }
}
