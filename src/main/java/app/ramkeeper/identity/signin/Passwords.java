package app.ramkeeper.identity.signin;

import java.util.Map;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.DelegatingPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

@Configuration
class Passwords {

    /**
     * Argon2id with 19 MiB, 2 rounds, 1 lane: the least the OWASP Password Storage Cheat Sheet names. Kept explicit,
     * since the library's own defaults are lower. A hash of other parameters is renewed at the next sign-in.
     */
    @Bean
    PasswordEncoder passwordEncoder() {
        return new DelegatingPasswordEncoder(
                "argon2id", Map.of("argon2id", new Argon2PasswordEncoder(16, 32, 1, 19456, 2)));
    }
}
