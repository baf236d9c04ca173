package app.ramkeeper.identity.signin;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ClassPathResource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What a new password must be: long enough, and not one that is tried first. No rules of composition, and it is taken
 * exactly as typed. After NIST SP 800-63B and OWASP ASVS 5.0.0 section 6.2.
 */
@Component
public class PasswordRules {

    private static final int SHORTEST = 8;
    private static final int LONGEST = 200;

    private final Set<String> common;
    private final JdbcClient jdbc;

    PasswordRules(JdbcClient jdbc) {
        this.jdbc = jdbc;
        try {
            this.common = new ClassPathResource("passwords-common.txt")
                    .getContentAsString(StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .collect(Collectors.toUnmodifiableSet());
        } catch (IOException missing) {
            throw new UncheckedIOException("The list of common passwords is missing", missing);
        }
    }

    /** Returns the message key of what is wrong with a new password, if anything is. */
    public Optional<String> objection(@Nullable String password, String login) {
        if (password == null || password.codePointCount(0, password.length()) < SHORTEST) {
            return Optional.of("password.short");
        }
        if (password.length() > LONGEST) {
            return Optional.of("password.long");
        }
        String folded = password.toLowerCase(Locale.ROOT);
        if (common.contains(folded) || folded.chars().distinct().count() < 3) {
            return Optional.of("password.common");
        }
        return isOfContext(letters(folded), login) ? Optional.of("password.context") : Optional.empty();
    }

    /** Whether nothing is left once the company's name, the program's name or the sign-in name is taken out. */
    private boolean isOfContext(String letters, String login) {
        String companyName = jdbc.sql("select coalesce(name, '') from company")
                .query(String.class)
                .optional()
                .orElse("");
        return Arrays.stream((companyName + " " + companyName.replaceAll("\\s", "") + " ramkeeper hydraulic rampump "
                                + login)
                        .toLowerCase(Locale.ROOT)
                        .split("\\s+"))
                .map(PasswordRules::letters)
                .filter(word -> word.length() >= 4)
                .anyMatch(word ->
                        letters.contains(word) && letters.replace(word, "").length() < 3);
    }

    /** Without digits and signs: "Longspur2026!" is the company's name and a year. */
    private static String letters(String text) {
        StringBuilder letters = new StringBuilder();
        text.codePoints().filter(c -> !isDigitOrSign(c)).forEach(letters::appendCodePoint);
        return letters.toString();
    }

    private static boolean isDigitOrSign(int c) {
        return c < 128 && !Character.isLetter(c);
    }
}
