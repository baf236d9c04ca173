package app.ramkeeper.bench.pages;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;

/** Nothing but the starters on the class path, on an empty database: what the application's start is compared with. */
@EnableAutoConfiguration
public class EmptyApplication {

    public static void main(String[] arguments) {
        // none of the application's own settings
        System.setProperty("spring.config.name", "empty");
        System.setProperty("spring.session.jdbc.initialize-schema", "always");
        SpringApplication.run(EmptyApplication.class, arguments);
    }
}
