package app.ramkeeper;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts Ramkeeper. */
@SpringBootApplication
public class RamkeeperApplication {

    public static void main(String[] args) {
        SpringApplication.run(RamkeeperApplication.class, args);
    }
}
