package app.ramkeeper.rounds.web;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.PositionText;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.travel.Area;
import app.ramkeeper.rounds.travel.TravelAreas;
import app.ramkeeper.rounds.week.StartPlaces;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.math.BigDecimal;
import java.util.UUID;
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

/** Where each technician's day begins and ends, and where roads are slower or more winding than usual. */
@Controller
@ForSetup
class PlacesPages {

    private static final String VIEW = "rounds/places";

    private final StartPlaces places;
    private final TravelAreas areas;
    private final People people;

    PlacesPages(StartPlaces places, TravelAreas areas, People people) {
        this.places = places;
        this.areas = areas;
        this.people = people;
    }

    @GetMapping("/rounds/places")
    String show(@RequestParam(required = false) @Nullable UUID area, Model model) {
        TypedForm form = new TypedForm();
        if (area != null) {
            Area there = areas.byId(area);
            form.set("id", area)
                    .set("name", there.name())
                    .set("corner", there.south() + ", " + there.west())
                    .set("opposite", there.north() + ", " + there.east())
                    .set("factor", there.roadFactor())
                    .set("speed", there.speedKmH());
        }
        return show(form, model);
    }

    private String show(TypedForm form, Model model) {
        model.addAttribute("places", places.all());
        model.addAttribute("areas", areas.all());
        model.addAttribute("form", form);
        return VIEW;
    }

    @PostMapping("/rounds/places/people/{person}")
    ModelAndView place(
            @PathVariable UUID person,
            @RequestParam MultiValueMap<String, String> posted,
            Model model,
            RedirectAttributes flash) {
        PersonId who = people.byId(new PersonId(person))
                .orElseThrow(() -> new Missing("person", person))
                .personId();
        TypedForm form = new TypedForm(posted);
        boolean starts = form.ticked("starts");
        boolean ends = form.ticked("ends");
        if (!starts && !ends) {
            places.forget(who);
            flash.addFlashAttribute("saved", Saved.of("rounds.saved.beginsAndEndsAt"));
            return new ModelAndView("redirect:/rounds/places");
        }
        Position at = position(form, "place");
        if (at == null) {
            model.addAttribute("wrong", person);
            return Saving.again(show(form, model), model);
        }
        places.change(who, starts, ends, at);
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.savedPlansThatExistAre"));
        return new ModelAndView("redirect:/rounds/places");
    }

    @PostMapping("/rounds/places/areas")
    ModelAndView area(@RequestParam MultiValueMap<String, String> posted, Model model, RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        UUID id = form.uuid("id");
        String name = form.text("name", 100);
        Position one = position(form, "corner");
        Position other = position(form, "opposite");
        Double factor = within(form, "factor", 1, 5);
        Double speed = within(form, "speed", 5, 130);
        if (name == null) {
            form.problem("name", "Give the area a name.");
        }
        if (one != null
                && other != null
                && (one.latitude() == other.latitude() || one.longitude() == other.longitude())) {
            form.problem("opposite", "Give the corner across: the two are on one line.");
        }
        if (form.hasProblems() || name == null || one == null || other == null || factor == null || speed == null) {
            return Saving.again(show(form, model), model);
        }
        areas.save(new Area(
                id == null ? TravelAreas.fresh() : areas.byId(id).id(),
                name,
                Math.min(one.latitude(), other.latitude()),
                Math.min(one.longitude(), other.longitude()),
                Math.max(one.latitude(), other.latitude()),
                Math.max(one.longitude(), other.longitude()),
                factor,
                speed));
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.savedEstimatesUseIt"));
        return new ModelAndView("redirect:/rounds/places");
    }

    @PostMapping("/rounds/places/areas/{id}/remove")
    String remove(@PathVariable UUID id, RedirectAttributes flash) {
        areas.remove(id);
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.removed"));
        return "redirect:/rounds/places";
    }

    private static @Nullable Position position(TypedForm form, String field) {
        String text = form.text(field, 100);
        if (text == null) {
            form.problem(field, "Give a position, such as -45.03, 168.66.");
            return null;
        }
        try {
            return PositionText.parse(text);
        } catch (IllegalArgumentException unreadable) {
            form.problem(field, String.valueOf(unreadable.getMessage()));
            return null;
        }
    }

    private static @Nullable Double within(TypedForm form, String field, double least, double most) {
        BigDecimal number = form.number(field);
        if (form.error(field) == null
                && (number == null || number.doubleValue() < least || number.doubleValue() > most)) {
            form.problem(field, "Give a number from " + (int) least + " to " + (int) most + ".");
        }
        return number == null ? null : number.doubleValue();
    }
}
