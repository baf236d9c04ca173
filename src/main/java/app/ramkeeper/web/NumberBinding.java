package app.ramkeeper.web;

import java.beans.PropertyEditorSupport;
import java.math.BigDecimal;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.PropertyEditorRegistry;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.InitBinder;

/** Reads numbers as people type them: a point or a comma before the decimals, blanks between thousands, no exponents. */
@ControllerAdvice
class NumberBinding {

    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,15}(\\.\\d{1,9})?");

    @InitBinder
    void readNumbers(WebDataBinder binder) {
        register(binder);
    }

    static void register(PropertyEditorRegistry binder) {
        binder.registerCustomEditor(Double.class, new Number(BigDecimal::doubleValue));
        binder.registerCustomEditor(BigDecimal.class, new Number(number -> number));
    }

    private static final class Number extends PropertyEditorSupport {

        private final Function<BigDecimal, ?> type;

        Number(Function<BigDecimal, ?> type) {
            this.type = type;
        }

        @Override
        public void setAsText(@Nullable String text) {
            String plain = text == null
                    ? ""
                    : text.strip()
                            .replace(',', '.')
                            .replace('\u2212', '-')
                            .replaceAll("(?<=\\d)[ \u00A0\u2009\u202F](?=\\d)", "");
            if (plain.isEmpty()) {
                setValue(null);
            } else if (NUMBER.matcher(plain).matches()) {
                setValue(type.apply(new BigDecimal(plain)));
            } else {
                throw new IllegalArgumentException("Not a number");
            }
        }

        @Override
        public String getAsText() {
            Object value = getValue();
            if (value instanceof Double number) {
                return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
            }
            return value instanceof BigDecimal number ? number.toPlainString() : "";
        }
    }
}
