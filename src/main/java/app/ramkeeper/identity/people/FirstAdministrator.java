package app.ramkeeper.identity.people;

import app.ramkeeper.identity.signin.OneTimeLinks;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Prints a link that makes the first administrator, at each start until there is one. */
@Component
@Profile("!trial")
class FirstAdministrator implements ApplicationRunner {

    private final Accounts accounts;
    private final OneTimeLinks links;

    FirstAdministrator(Accounts accounts, OneTimeLinks links) {
        this.accounts = accounts;
        this.links = links;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (accounts.none()) {
            String link = links.make(OneTimeLinks.Purpose.SETUP, null);
            System.out.println();
            System.out.println("Nobody can sign in yet. Make the first administrator here (works once, for "
                    + links.lifetime(OneTimeLinks.Purpose.SETUP).toHours() + " hours):");
            System.out.println("  " + link);
        }
    }
}
