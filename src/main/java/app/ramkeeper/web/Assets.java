package app.ramkeeper.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.springframework.web.servlet.resource.LiteWebJarsResourceResolver;
import org.springframework.web.servlet.resource.VersionResourceResolver;

/**
 * Serves the files of pages under names that carry their content. Only these folders are files: with a handler for every path each link of a
 * page would be looked for in all jars, which took most of the time of a long list.
 */
@Configuration(proxyBeanMethods = false)
class Assets implements WebMvcConfigurer {

    private static final List<String> FOLDERS = List.of("css", "js", "fonts", "icons");

    /** Text files say their charset: a browser may not guess it. */
    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new HandlerInterceptor() {
                    @Override
                    public boolean preHandle(HttpServletRequest request, HttpServletResponse answer, Object handler) {
                        answer.setCharacterEncoding(StandardCharsets.UTF_8);
                        return true;
                    }
                })
                .addPathPatterns("/css/**", "/js/**", "/webjars/**", "/fonts/*.txt");
    }

    @Override
    public void addResourceHandlers(ResourceHandlerRegistry registry) {
        for (String folder : FOLDERS) {
            registry.addResourceHandler("/" + folder + "/**")
                    .addResourceLocations("classpath:/static/" + folder + "/")
                    .resourceChain(true)
                    .addResolver(new VersionResourceResolver().addContentVersionStrategy("/**"));
        }
        registry.addResourceHandler("/webjars/**")
                .addResourceLocations("classpath:/META-INF/resources/webjars/")
                .resourceChain(true)
                .addResolver(new LiteWebJarsResourceResolver());
    }
}
