package app.ramkeeper.identity.signin;

import app.ramkeeper.identity.IdentitySettings;
import app.ramkeeper.identity.Role;
import jakarta.servlet.DispatcherType;
import java.time.Clock;
import java.util.stream.Stream;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.method.configuration.EnableMethodSecurity;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.logout.HeaderWriterLogoutHandler;
import org.springframework.security.web.context.SecurityContextHolderFilter;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.security.web.header.writers.ClearSiteDataHeaderWriter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.NullRequestCache;
import org.springframework.security.web.util.matcher.AnyRequestMatcher;

/** The one chain of checks that every request passes. What is not named open here needs a role. */
@Configuration
@EnableMethodSecurity
@EnableConfigurationProperties(IdentitySettings.class)
class SecurityChain {

    static final String CONTENT_POLICY = String.join(
            "; ",
            "default-src 'none'",
            "script-src 'self'",
            "style-src 'self'",
            "img-src 'self' data: blob:",
            "font-src 'self'",
            "connect-src 'self'",
            "media-src 'self' blob:",
            "worker-src 'self'",
            "manifest-src 'self'",
            "object-src 'none'",
            "form-action 'self'",
            "base-uri 'none'",
            "frame-ancestors 'none'");

    private static final String[] FILES = {"/css/**", "/js/**", "/fonts/**", "/icons/**", "/webjars/**", "/favicon.ico"
    };
    private static final String[] PHONE = {"/field", "/field/app/**", "/sw.js", "/manifest.webmanifest"};
    private static final String[] HEALTH = {
        "/actuator/health", "/actuator/health/liveness", "/actuator/health/readiness"
    };

    @Bean
    SecurityFilterChain chain(
            HttpSecurity http,
            IdentitySettings settings,
            SignInOutcome outcome,
            NotSignedIn notSignedIn,
            Denied denied,
            Clock clock) {
        http.addFilterAfter(new PlainQuery(), HeaderWriterFilter.class)
                .addFilterBefore(new SessionEnd(settings, clock), SecurityContextHolderFilter.class)
                .authorizeHttpRequests(routes -> routes.dispatcherTypeMatchers(
                                DispatcherType.FORWARD, DispatcherType.ERROR, DispatcherType.ASYNC)
                        .permitAll()
                        .requestMatchers(FILES)
                        .permitAll()
                        .requestMatchers(PHONE)
                        .permitAll()
                        .requestMatchers(HEALTH)
                        .permitAll()
                        .requestMatchers("/sign-in/**", "/link/**", "/q/**", "/denied")
                        .permitAll()
                        .requestMatchers(HttpMethod.GET, "/calendar/{token}/rounds.ics")
                        .permitAll()
                        .anyRequest()
                        .hasAnyRole(Stream.of(Role.values()).map(Role::name).toArray(String[]::new)))
                .formLogin(form -> form.loginPage("/sign-in")
                        .usernameParameter("login")
                        .passwordParameter("password")
                        .successHandler(outcome)
                        .failureHandler(outcome))
                .logout(out -> out.logoutUrl("/sign-out")
                        .logoutSuccessUrl("/sign-in?out")
                        .addLogoutHandler(new HeaderWriterLogoutHandler(
                                new ClearSiteDataHeaderWriter(ClearSiteDataHeaderWriter.Directive.CACHE))))
                .requestCache(cache -> cache.requestCache(new NullRequestCache()))
                .httpBasic(basic -> basic.disable())
                .anonymous(anonymous -> {})
                .exceptionHandling(failures ->
                        failures.authenticationEntryPoint(notSignedIn).accessDeniedHandler(denied))
                .headers(headers -> headers(headers, settings));
        return http.build();
    }

    private static void headers(HeadersConfigurer<HttpSecurity> headers, IdentitySettings settings) {
        headers.contentSecurityPolicy(policy -> policy.policyDirectives(CONTENT_POLICY))
                .cacheControl(standard -> standard.disable())
                .addHeaderWriter(new CacheHeaders())
                .referrerPolicy(policy -> policy.policy(ReferrerPolicy.SAME_ORIGIN))
                .permissionsPolicyHeader(policy -> policy.policy(
                        "accelerometer=(), autoplay=(), camera=(self), display-capture=(), fullscreen=(self), geolocation=(self),"
                                + " gyroscope=(), magnetometer=(), microphone=(self), midi=(), payment=(), usb=()"))
                .crossOriginOpenerPolicy(policy -> policy.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
                .crossOriginResourcePolicy(policy -> policy.policy(CrossOriginResourcePolicy.SAME_ORIGIN));
        if (settings.tls()) {
            // A proxy ends the TLS, so the header does not wait for a request that looks secure from here.
            headers.httpStrictTransportSecurity(transport -> transport
                    .requestMatcher(AnyRequestMatcher.INSTANCE)
                    .maxAgeInSeconds(31_536_000)
                    .includeSubDomains(true));
        }
    }
}
