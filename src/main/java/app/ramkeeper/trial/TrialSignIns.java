package app.ramkeeper.trial;

import app.ramkeeper.identity.Role;
import app.ramkeeper.identity.people.Accounts;
import app.ramkeeper.identity.people.Accounts.NewAccount;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.Set;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** The trial's accounts, one a role, with passwords made at random on the first start and printed at every start. */
@Component
@Profile("trial")
@Order(Ordered.LOWEST_PRECEDENCE)
class TrialSignIns implements ApplicationRunner {

    private record Trialist(String login, String name, Role role) {}

    private static final Path FILE = Path.of("data", "sign-in.txt");
    private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final List<Trialist> TRIALISTS = List.of(
            new Trialist("office", "Marama Teal", Role.OFFICE),
            new Trialist("technician", "Jonty Brack", Role.TECHNICIAN),
            new Trialist("manager", "Isla Fennimore", Role.MANAGER),
            new Trialist("administrator", "Ruben Oake", Role.ADMINISTRATOR));

    private final Accounts accounts;

    TrialSignIns(Accounts accounts) {
        this.accounts = accounts;
    }

    @Override
    public void run(ApplicationArguments arguments) throws IOException {
        if (accounts.none()) {
            StringBuilder lines = new StringBuilder("Sign-in names and passwords of this trial:\n");
            for (Trialist trialist : TRIALISTS) {
                String password = password();
                accounts.create(new NewAccount(
                        accounts.addPerson(trialist.name()), trialist.login(), password, Set.of(trialist.role())));
                lines.append("  %-14s %s%n".formatted(trialist.login(), password));
            }
            Files.createDirectories(FILE.getParent());
            Files.writeString(FILE, lines);
        }
        System.out.println();
        System.out.println(Files.exists(FILE) ? Files.readString(FILE) : "The file " + FILE + " is gone.");
    }

    private static String password() {
        StringBuilder password = new StringBuilder();
        for (int i = 0; i < 16; i++) {
            password.append(i % 4 == 0 && i > 0 ? "-" : "").append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
        }
        return password.toString();
    }
}
