package app.ramkeeper.web;

import app.ramkeeper.shared.Text;
import java.beans.PropertyEditorSupport;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.InitBinder;

/** Cleans every text that a form posts; a control character becomes an error by its field. Blank becomes absent. */
@ControllerAdvice
class TextBinding {

    @InitBinder
    void cleanText(WebDataBinder binder) {
        binder.registerCustomEditor(String.class, new CleanText());
    }

    private static final class CleanText extends PropertyEditorSupport {
        @Override
        public void setAsText(@Nullable String text) {
            String clean = Text.clean(text);
            setValue(clean == null || clean.isEmpty() ? null : clean);
        }
    }
}
