package app.ramkeeper.fleet.web;

import app.ramkeeper.fleet.Biosecurity;
import app.ramkeeper.fleet.CatchmentId;
import app.ramkeeper.fleet.Catchments;
import app.ramkeeper.identity.ForOffice;
import app.ramkeeper.shared.Missing;
import app.ramkeeper.shared.Uuids;
import app.ramkeeper.web.LostUpdate;
import app.ramkeeper.web.Saved;
import app.ramkeeper.web.Saving;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
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

/** Catchments: whose flood hits whom, and what must not be carried out of one. */
@Controller
@ForOffice
@RequestMapping("/catchments")
class CatchmentPages {

    private static final String FORM = "fleet/catchment-form";

    /** A catchment with the number of its sites. */
    public record Row(UUID id, String name, Biosecurity biosecurity, long sites) {}

    /** A catchment as its form shows it. */
    record CatchmentForm(
            @Nullable UUID id,
            @Nullable Integer version,
            @NotBlank @Size(max = 100) @Nullable String name,
            @NotNull @Nullable Biosecurity biosecurity) {}

    private final Catchments catchments;
    private final JdbcClient jdbc;
    private final Words words;
    private final Saving saving;

    CatchmentPages(Catchments catchments, JdbcClient jdbc, Words words, Saving saving) {
        this.catchments = catchments;
        this.jdbc = jdbc;
        this.words = words;
        this.saving = saving;
    }

    @ModelAttribute
    void choices(Model model) {
        model.addAttribute("threats", words.all(Biosecurity.class));
    }

    @GetMapping
    String list(Model model) {
        List<Row> rows = jdbc.sql("""
                        select c.id, c.name, c.biosecurity, (select count(*) from sites s where s.catchment_id = c.id) as sites
                        from catchments c order by folded(c.name) limit 1000""").query(Row.class).list();
        model.addAttribute("catchments", rows);
        return "fleet/catchments";
    }

    @GetMapping("/new")
    String blank(Model model) {
        model.addAttribute("form", new CatchmentForm(Uuids.next(), null, null, Biosecurity.CLEAN));
        return FORM;
    }

    @PostMapping
    ModelAndView create(
            @Valid @ModelAttribute("form") CatchmentForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        CatchmentId id = new CatchmentId(form.id() == null ? Uuids.next() : form.id());
        boolean done = saving.did(errors, () -> catchments.register(id, name(form), threat(form)));
        return done ? kept(redirect) : Saving.again(FORM, model).addObject("form", form);
    }

    @GetMapping("/{id}/edit")
    String edit(@PathVariable UUID id, Model model) {
        model.addAttribute("id", id);
        model.addAttribute("form", present(id));
        return FORM;
    }

    @PostMapping("/{id}/edit")
    ModelAndView change(
            @PathVariable("id") UUID catchment,
            @Valid @ModelAttribute("form") CatchmentForm form,
            BindingResult errors,
            Model model,
            RedirectAttributes redirect) {
        model.addAttribute("id", catchment);
        int version = form.version() == null ? 0 : form.version();
        try {
            boolean done = saving.did(
                    errors, () -> catchments.edit(new CatchmentId(catchment), version, name(form), threat(form)));
            return done ? kept(redirect) : Saving.again(FORM, model).addObject("form", form);
        } catch (OptimisticLockingFailureException lost) {
            CatchmentForm now = present(catchment);
            return LostUpdate.between(form, now, "fleet.catchment.")
                    .page(FORM, model, now.version() == null ? 0 : now.version());
        }
    }

    private static ModelAndView kept(RedirectAttributes redirect) {
        redirect.addFlashAttribute("saved", Saved.of("fleet.saved.catchmentSaved"));
        return new ModelAndView("redirect:/catchments");
    }

    private static String name(CatchmentForm form) {
        return Given.need(form.name(), "Give it a name.").strip();
    }

    private static Biosecurity threat(CatchmentForm form) {
        return Given.need(form.biosecurity(), "Choose what must not be carried out of it.");
    }

    private CatchmentForm present(UUID id) {
        return jdbc.sql("select null::uuid as id, version, name, biosecurity from catchments where id = :id")
                .param("id", id)
                .query(CatchmentForm.class)
                .optional()
                .orElseThrow(() -> new Missing("catchment", id));
    }
}
