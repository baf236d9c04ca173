package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.AsBuiltPoint;
import app.ramkeeper.fleet.Fleet;
import app.ramkeeper.fleet.InstallId;
import app.ramkeeper.fleet.PointKind;
import app.ramkeeper.fleet.SystemRegister;
import app.ramkeeper.identity.ForField;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.web.Choice;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A line as it was laid, point by point: the technician reads it, the office keeps it. */
@Controller
@ForField
@RequestMapping("/installs/{id}/system/{element}/points")
class PointsPages {

    /** All points as text, and how many there were when it was opened. */
    record PointsForm(
            @Size(max = 500_000) @Nullable String points,
            @Nullable String before) {}

    private final Fleet fleet;
    private final SystemRegister system;
    private final Words words;
    private final Saving saving;

    PointsPages(Fleet fleet, SystemRegister system, Words words, Saving saving) {
        this.fleet = fleet;
        this.system = system;
        this.words = words;
        this.saving = saving;
    }

    @GetMapping
    String show(@PathVariable UUID id, @PathVariable UUID element, Model model) {
        List<AsBuiltPoint> points = page(id, element, model);
        model.addAttribute("form", new PointsForm(text().write(points), fingerprint(points)));
        return "fleet/points";
    }

    @PostMapping
    @ForOffice
    ModelAndView keep(
            @PathVariable UUID id,
            @PathVariable UUID element,
            @Valid @ModelAttribute("form") PointsForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        List<AsBuiltPoint> present = page(id, element, model);
        if (!fingerprint(present).equals(form.before())) {
            errors.reject(
                    "points.changed",
                    "Somebody else kept points of this line meanwhile; they stand in the table. Save again to put yours in their place.");
        }
        boolean done = saving.did(
                errors,
                () -> system.keepPoints(
                        new InstallId(id), element, text().read(form.points() == null ? "" : form.points())));
        if (!done) {
            return Saving.again("fleet/points", model)
                    .addObject("form", new PointsForm(form.points(), fingerprint(present)));
        }
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.pointsKept"));
        return new ModelAndView("redirect:/installs/" + id + "/system/" + element + "/points");
    }

    private List<AsBuiltPoint> page(UUID id, UUID element, Model model) {
        InstallId install = new InstallId(id);
        List<AsBuiltPoint> points = system.points(install, element);
        model.addAttribute("install", fleet.install(install));
        model.addAttribute("element", element);
        model.addAttribute("name", system.nameOf(install, element));
        model.addAttribute("points", points);
        model.addAttribute("kinds", words.all(PointKind.class));
        return points;
    }

    private PointsText text() {
        Map<PointKind, String> kinds = new EnumMap<>(PointKind.class);
        for (Choice kind : words.all(PointKind.class)) {
            kinds.put(PointKind.valueOf(kind.value()), kind.label());
        }
        return new PointsText(kinds);
    }

    /** Tells whether another person kept points in between. */
    private static String fingerprint(List<AsBuiltPoint> points) {
        return points.size() + "-" + Integer.toHexString(points.hashCode());
    }
}
