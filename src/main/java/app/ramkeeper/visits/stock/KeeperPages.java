package app.ramkeeper.visits.stock;

import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.visits.VisitChoices;
import app.ramkeeper.visits.stock.Keepers.InstrumentForm;
import app.ramkeeper.visits.stock.Keepers.InstrumentKind;
import app.ramkeeper.visits.stock.Keepers.PlaceForm;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The places of stock and the instruments: small lists, each with its form below. */
@Controller
@ForOffice
class KeeperPages {

    private static final String PLACES = "visits/stock-places";
    private static final String INSTRUMENTS = "visits/instruments";

    private final Keepers keepers;
    private final VisitChoices choices;
    private final Saving saving;

    KeeperPages(Keepers keepers, VisitChoices choices, Saving saving) {
        this.keepers = keepers;
        this.choices = choices;
        this.saving = saving;
    }

    @GetMapping("/stock/places")
    String places(Model model) {
        model.addAttribute("form", new PlaceForm(null, null, null));
        return fillPlaces(model);
    }

    @PostMapping("/stock/places")
    ModelAndView add(
            @Valid @ModelAttribute("form") PlaceForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        if ((form.depot() == null) == (form.person() == null)) {
            errors.rejectValue("person", "stock.whose", "Choose a depot or a person, one of the two.");
        }
        if (!saving.did(errors, () -> keepers.add(form))) {
            return Saving.again(fillPlaces(model), model).addObject("form", form);
        }
        flash.addFlashAttribute("saved", Saved.of("stock.saved.added", form.name()));
        return new ModelAndView("redirect:/stock/places");
    }

    @GetMapping("/instruments")
    String instruments(Model model) {
        model.addAttribute("form", new InstrumentForm(null, null, null, null));
        return fillInstruments(model, null);
    }

    @PostMapping("/instruments")
    ModelAndView add(
            @Valid @ModelAttribute("form") InstrumentForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        if (!saving.did(errors, () -> keepers.add(form))) {
            return Saving.again(fillInstruments(model, null), model).addObject("form", form);
        }
        flash.addFlashAttribute("saved", Saved.of("stock.saved.added", form.name()));
        return new ModelAndView("redirect:/instruments");
    }

    @GetMapping("/instruments/{id}")
    String edit(@PathVariable UUID id, Model model) {
        model.addAttribute("form", keepers.instrument(id));
        return fillInstruments(model, id);
    }

    @PostMapping("/instruments/{id}")
    ModelAndView save(
            @PathVariable UUID id,
            @Valid @ModelAttribute("form") InstrumentForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        InstrumentForm present = keepers.instrument(id);
        boolean[] mine = {true};
        if (!saving.did(errors, () -> mine[0] = keepers.change(id, form))) {
            return Saving.again(fillInstruments(model, id), model).addObject("form", form);
        }
        if (!mine[0]) {
            return LostUpdate.between(form, present, "stock.instrument.")
                    .page(fillInstruments(model, id), model, Objects.requireNonNull(present.version()));
        }
        flash.addFlashAttribute("saved", Saved.of("stock.saved.saved", form.name()));
        return new ModelAndView("redirect:/instruments");
    }

    private String fillPlaces(Model model) {
        model.addAttribute("places", keepers.places());
        model.addAttribute("depots", choices.depots());
        model.addAttribute("people", choices.people());
        return PLACES;
    }

    private String fillInstruments(Model model, @Nullable UUID id) {
        model.addAttribute("id", id);
        model.addAttribute("instruments", keepers.instruments());
        model.addAttribute("kinds", choices.of("instrument", InstrumentKind.values()));
        return INSTRUMENTS;
    }
}
