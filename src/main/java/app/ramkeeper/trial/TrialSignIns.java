package app.ramkeeper.trial;

import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/** The trial's accounts, one a role, with passwords made at random on the first start and printed at every start. */
@Component
@Profile("trial")
@Order(0)
class TrialSignIns implements ApplicationRunner {

    private record Trialist(String login, String name, Role role) {}

    private static final String SHEET = "sign-in.txt";
    private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final List<Trialist> TRIALISTS = List.of(
            new Trialist("office", "Marama Teal", Role.OFFICE),
            new Trialist("technician", "Jonty Brack", Role.TECHNICIAN),
            new Trialist("manager", "Isla Fennimore", Role.MANAGER),
            new Trialist("administrator", "Ruben Oake", Role.ADMINISTRATOR));

    private final Accounts accounts;
    private final TransactionTemplate transaction;
    private final TrialFolder folder;

    TrialSignIns(
            Accounts accounts,
            PlatformTransactionManager transactions,
            @Value("${ramkeeper.trial.folder:data}") Path folder) {
        this.accounts = accounts;
        this.transaction = new TransactionTemplate(transactions);
        this.folder = new TrialFolder(folder);
    }

    @Override
    public void run(ApplicationArguments arguments) throws IOException {
        if (accounts.none()) {
            Map<Trialist, String> passwords = new LinkedHashMap<>();
            TRIALISTS.forEach(trialist -> passwords.put(trialist, password()));
            folder.write(SHEET, sheet(passwords));
            transaction.executeWithoutResult(status -> passwords.forEach(this::create));
        }
        Path sheet = folder.root().resolve(SHEET);
        System.out.println();
        System.out.println(
                Files.exists(sheet)
                        ? Files.readString(sheet)
                        : "The sheet " + sheet + " with names and passwords is gone. Remove the folder " + folder.root()
                                + " to start the trial afresh.");
    }

    private void create(Trialist trialist, String password) {
        accounts.create(new NewAccount(
                accounts.addPerson(trialist.name()), trialist.login(), password, Set.of(trialist.role())));
    }

    private static String sheet(Map<Trialist, String> passwords) {
        StringBuilder lines = new StringBuilder("Sign-in names and passwords of this trial:\n");
        passwords.forEach((trialist, password) ->
                lines.append("  %-14s %s  (%s)%n".formatted(trialist.login(), password, trialist.name())));
        return lines.toString();
    }

    private static String password() {
        StringBuilder password = new StringBuilder();
        for (int i = 0; i < 16; i++) {
            password.append(i % 4 == 0 && i > 0 ? "-" : "").append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
        }
        return password.toString();
    }
}
