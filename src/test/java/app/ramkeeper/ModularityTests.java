package app.ramkeeper;

import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;

class ModularityTests {

    @Test
    void dependenciesPointOneWay() {
        ApplicationModules.of(RamkeeperApplication.class).verify();
    }
}
