package app.ramkeeper.fleet;

import org.springframework.boot.test.context.TestComponent;

/** Makes customers for tests. */
@TestComponent
public class Customers {

    private final CustomerRegister register;

    Customers(CustomerRegister register) {
        this.register = register;
    }

    public CustomerId named(String name) {
        return AsOffice.call(() -> register.register(CustomerDetails.named(name)));
    }
}
