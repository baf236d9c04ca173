package app.ramkeeper.web;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.MethodParameter;
import org.springframework.core.convert.ConversionService;
import org.springframework.ui.ModelMap;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.validation.FieldError;
import org.springframework.web.bind.ServletRequestBindingException;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.InitBinder;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.annotation.ModelFactory;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerAdapter;
import org.springframework.web.servlet.mvc.method.annotation.ServletModelAttributeMethodProcessor;

/**
 * Keeps a form of which one field could not be read. A record is made by its constructor, with null for such a field,
 * but the framework leaves it out of the model and of its errors then: the page that is to show it again cannot read it,
 * and no further rule can be named beside a field.
 */
@Configuration(proxyBeanMethods = false)
class KeptForms {

    @Bean
    static BeanPostProcessor keepsForms(
            @Qualifier("mvcConversionService") ObjectProvider<ConversionService> conversion) {
        return new BeanPostProcessor() {
            @Override
            public Object postProcessAfterInitialization(Object bean, String name) {
                if (bean instanceof RequestMappingHandlerAdapter adapter) {
                    List<HandlerMethodArgumentResolver> resolvers =
                            Objects.requireNonNull(adapter.getArgumentResolvers());
                    adapter.setArgumentResolvers(resolvers.stream()
                            .map(resolver -> resolver instanceof ServletModelAttributeMethodProcessor
                                    ? new Keeping(resolver, conversion)
                                    : resolver)
                            .toList());
                }
                return bean;
            }
        };
    }

    /** The framework reads 256 rows of a table; a pump model's has more points. */
    @ControllerAdvice
    static class LongTables {

        private static final int ROWS = 2500;

        @InitBinder
        void readLongTables(WebDataBinder binder) {
            binder.setAutoGrowCollectionLimit(ROWS);
        }
    }

    /** Reads the form as the framework does, and puts it where it belongs. */
    private record Keeping(HandlerMethodArgumentResolver inner, ObjectProvider<ConversionService> conversion)
            implements HandlerMethodArgumentResolver {

        @Override
        public boolean supportsParameter(MethodParameter parameter) {
            return inner.supportsParameter(parameter);
        }

        @Override
        public @Nullable Object resolveArgument(
                MethodParameter parameter,
                @Nullable ModelAndViewContainer container,
                NativeWebRequest request,
                @Nullable WebDataBinderFactory binders)
                throws Exception {
            Object form;
            try {
                form = inner.resolveArgument(parameter, container, request, binders);
            } catch (IndexOutOfBoundsException beyond) {
                throw new ServletRequestBindingException("A table has more rows than are read", beyond);
            }
            if (form != null && container != null) {
                keep(ModelFactory.getNameForParameter(parameter), form, container.getModel());
            }
            return form;
        }

        /** The errors stay last in the model, where the parameter that follows the form looks for them. */
        private void keep(String name, Object form, ModelMap model) {
            String key = BindingResult.MODEL_KEY_PREFIX + name;
            if (model.get(key) instanceof BindingResult errors && errors.getTarget() == null) {
                Kept kept = new Kept(form, name);
                kept.initConversion(conversion.getObject());
                NumberBinding.register(Objects.requireNonNull(kept.getPropertyEditorRegistry()));
                kept.addAllErrors(errors);
                model.remove(name);
                model.remove(key);
                model.addAttribute(name, form);
                model.addAttribute(key, kept);
            }
        }
    }

    /** Of a field that could not be read that alone is said: a rule would only see that nothing stands there. */
    private static final class Kept extends BeanPropertyBindingResult {

        Kept(Object form, String name) {
            super(form, name);
        }

        @Override
        public void rejectValue(
                @Nullable String field, String code, Object @Nullable [] arguments, @Nullable String message) {
            if (field == null || getFieldErrors(field).stream().noneMatch(FieldError::isBindingFailure)) {
                super.rejectValue(field, code, arguments, message);
            }
        }
    }
}
