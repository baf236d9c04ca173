package app.ramkeeper.rounds.web;

import app.ramkeeper.fleet.Position;
import app.ramkeeper.fleet.PositionText;
import app.ramkeeper.identity.ForSetup;
import app.ramkeeper.identity.People;
import app.ramkeeper.identity.PersonId;
import app.ramkeeper.rounds.travel.Area;
import app.ramkeeper.rounds.travel.TravelAreas;
import app.ramkeeper.rounds.web.BothForms.Field;
import app.ramkeeper.rounds.week.StartPlaces;
import app.ramkeeper.rounds.week.StartPlaces.Place;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.visits.form.TypedForm;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
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

/** Where each technician's day begins and ends, and where roads are slower or more winding than usual. */
@Controller
@ForSetup
class PlacesPages {

    private static final String VIEW = "rounds/places";

    private static final List<Field> AREA = Stream.of("name", "corner", "opposite", "factor", "speed")
            .map(field -> new Field(field, "rounds.areas." + field))
            .toList();

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
        return show(area == null ? new TypedForm() : of(areas.byId(area)), model);
    }

    private static TypedForm of(Area area) {
        return new TypedForm()
                .set("id", area.id())
                .set("name", area.name())
                .set("corner", area.south() + ", " + area.west())
                .set("opposite", area.north() + ", " + area.east())
                .set("factor", area.roadFactor())
                .set("speed", area.speedKmH())
                .set("version", area.version());
    }

    private static TypedForm of(Place place) {
        Position own = place.position();
        return new TypedForm()
                .set("starts", "HOME".equals(place.startsAt()) ? true : null)
                .set("ends", "HOME".equals(place.endsAt()) ? true : null)
                .set("place", own == null ? null : own.latitude() + ", " + own.longitude())
                .set("version", place.version());
    }

    private String show(TypedForm form, Model model) {
        model.addAttribute("places", places.all());
        model.addAttribute("usual", areas.usual());
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
        Integer seen = version(form);
        if (!starts && !ends) {
            if (!places.forget(who, seen)) {
                return lost(who, form, model);
            }
            flash.addFlashAttribute("saved", Saved.of("rounds.saved.beginsAndEndsAt"));
            return new ModelAndView("redirect:/rounds/places");
        }
        Position at = position(form, "place");
        if (at == null) {
            model.addAttribute("wrong", person);
            return Saving.again(show(form, model), model);
        }
        if (!places.change(who, starts, ends, at, seen)) {
            return lost(who, form, model);
        }
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.savedPlansThatExistAre"));
        return new ModelAndView("redirect:/rounds/places");
    }

    /** What was typed of a person's place, beside what somebody else has saved meanwhile. */
    private ModelAndView lost(PersonId who, TypedForm form, Model model) {
        TypedForm present = places.all().stream()
                .filter(place -> place.personId().equals(who.value()))
                .findFirst()
                .map(PlacesPages::of)
                .orElseGet(TypedForm::new);
        model.addAttribute("wrong", who.value());
        LostUpdate lost = BothForms.between(
                form,
                present,
                List.of(
                        new Field("starts", "rounds.places.begins", "starts-" + who.value()),
                        new Field("ends", "rounds.places.ends", "ends-" + who.value()),
                        new Field("place", "rounds.places.own", "place-" + who.value())));
        return lost.page(show(form, model), model);
    }

    @PostMapping("/rounds/places/areas")
    ModelAndView area(@RequestParam MultiValueMap<String, String> posted, Model model, RedirectAttributes flash) {
        TypedForm form = new TypedForm(posted);
        UUID id = form.uuid("id");
        String name = form.text("name", 100);
        Position one = position(form, "corner");
        Position other = position(form, "opposite");
        Double factor = within(form, "factor", "Road factor", 1, 5);
        Double speed = within(form, "speed", "Speed, km/h", 5, 130);
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
        Integer seen = version(form);
        boolean mine = areas.save(new Area(
                id == null ? TravelAreas.fresh() : areas.byId(id).id(),
                name,
                Math.min(one.latitude(), other.latitude()),
                Math.min(one.longitude(), other.longitude()),
                Math.max(one.latitude(), other.latitude()),
                Math.max(one.longitude(), other.longitude()),
                factor,
                speed,
                seen == null ? -1 : seen));
        if (id != null && !mine) {
            return BothForms.between(form, of(areas.byId(id)), AREA).page(show(form, model), model);
        }
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.savedEstimatesUseIt"));
        return new ModelAndView("redirect:/rounds/places");
    }

    @PostMapping("/rounds/places/areas/{id}/remove")
    String remove(@PathVariable UUID id, @RequestParam int version, RedirectAttributes flash) {
        areas.remove(id, version);
        flash.addFlashAttribute("saved", Saved.of("rounds.saved.removed"));
        return "redirect:/rounds/places";
    }

    /** The version that the page showed; null if it showed none. */
    private static @Nullable Integer version(TypedForm form) {
        String text = form.value("version");
        return text.matches("\\d{1,9}") ? Integer.valueOf(text) : null;
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

    private static @Nullable Double within(TypedForm form, String field, String what, double least, double most) {
        BigDecimal number = form.value(field).matches("[+-]?\\d{1,12}(\\.\\d{1,9})?") ? form.number(field) : null;
        if (form.error(field) == null
                && (number == null || number.doubleValue() < least || number.doubleValue() > most)) {
            form.problem(field, what + ": give a number from " + (int) least + " to " + (int) most + ".");
        }
        return number == null ? null : number.doubleValue();
    }
}
