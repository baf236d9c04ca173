package app.ramkeeper.web;

import app.ramkeeper.shared.Conflict;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.validation.Errors;
import org.springframework.validation.FieldError;
import org.springframework.web.servlet.ModelAndView;

/** Saves what a form posts; a rule that stands against it becomes an error of the form, and nothing typed is lost. */
@Component
public class Saving {

    private final DatabaseRules rules;

    Saving(DatabaseRules rules) {
        this.rules = rules;
    }

    /** Runs the work unless the form has errors already; false if it has or gets some. A lost update is thrown on. */
    public boolean did(Errors errors, Runnable work) {
        if (errors.hasErrors()) {
            return false;
        }
        try {
            work.run();
            return true;
        } catch (Conflict conflict) {
            reject(errors, conflict);
        } catch (DataIntegrityViolationException broken) {
            rules.reject(errors, broken);
        }
        return false;
    }

    private static void reject(Errors errors, Conflict conflict) {
        String field = conflict.field();
        String sentence = String.valueOf(conflict.getMessage());
        if (field != null && errors.getFieldType(field) != null) {
            errors.rejectValue(field, "conflict", sentence);
        } else {
            errors.reject("conflict", sentence);
        }
    }

    /** The form as it stands, for a step that saves nothing: nothing is complained about. */
    public static ModelAndView asItStands(String view, Model model, Object form, Errors errors) {
        if (errors.getFieldErrors().stream().noneMatch(FieldError::isBindingFailure)) {
            model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", new BeanPropertyBindingResult(form, "form"));
        }
        return new ModelAndView(view, model.asMap()).addObject("form", form);
    }

    /** The form again, as typed, with status 422. */
    public static ModelAndView again(String view, Model model) {
        return new ModelAndView(view, model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
    }
}
