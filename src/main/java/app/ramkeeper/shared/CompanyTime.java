package app.ramkeeper.shared;

import java.time.Clock;
import java.time.ZoneId;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.boot.validation.autoconfigure.ValidationConfigurationCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The one clock. Its zone is the company's: {@code LocalDate.now(clock)} is the company's today. */
@Configuration
@EnableConfigurationProperties(CompanyTime.Zone.class)
class CompanyTime {

    @Bean
    Clock clock(Zone settings) {
        return Clock.system(settings.zone());
    }

    /** "In the past" and "not in the future" on forms mean the company's today. */
    @Bean
    ValidationConfigurationCustomizer companyToday(Clock clock) {
        return configuration -> configuration.clockProvider(() -> clock);
    }

    /** The company's time zone, {@code ramkeeper.zone}. */
    @ConfigurationProperties("ramkeeper")
    record Zone(@DefaultValue("Pacific/Auckland") ZoneId zone) {}
}
