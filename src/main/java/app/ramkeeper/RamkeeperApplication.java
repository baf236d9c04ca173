package app.ramkeeper;

import java.lang.reflect.InvocationTargetException;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts Ramkeeper: on the database that is configured, or, from the source tree only, as a trial run. */
@SpringBootApplication
public class RamkeeperApplication {

    private static final String TRIAL = "app.ramkeeper.trial.TrialRun";

    public static void main(String[] args) {
        SpringApplication application = new SpringApplication(RamkeeperApplication.class);
        if (System.getenv("SPRING_DATASOURCE_URL") == null && System.getProperty("spring.datasource.url") == null) {
            prepareTrial(application, args);
        }
        application.run(args);
    }

    /** The trial stands outside the packaged jar, so it is looked up by name. */
    private static void prepareTrial(SpringApplication application, String[] args) {
        try {
            Class.forName(TRIAL)
                    .getMethod("prepare", SpringApplication.class, String[].class)
                    .invoke(null, application, args);
        } catch (ClassNotFoundException packaged) {
            System.err.println("""
                    Ramkeeper needs a PostgreSQL database (15 or newer). Set these in the environment and start it again:
                      SPRING_DATASOURCE_URL=jdbc:postgresql://host:5432/ramkeeper
                      SPRING_DATASOURCE_USERNAME=...
                      SPRING_DATASOURCE_PASSWORD=...""");
            System.exit(64);
        } catch (InvocationTargetException failed) {
            throw new IllegalStateException("The trial run could not be prepared", failed.getCause());
        } catch (ReflectiveOperationException broken) {
            throw new IllegalStateException("The trial run is incomplete", broken);
        }
    }
}
