package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.TestDatabase;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.core.io.ClassPathResource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.annotation.Transactional;

@SpringBootTest
@Import(TestDatabase.class)
class PasswordRulesTests {

    @Autowired
    PasswordRules rules;

    @Autowired
    JdbcClient jdbc;

    @Test
    @DisplayName("SEC-46 refuses each of thousands of common passwords, in capitals too")
    void sec46RefusesCommonOnes() throws Exception {
        List<String> common = new ClassPathResource("passwords-common.txt")
                .getContentAsString(StandardCharsets.UTF_8)
                .lines()
                .filter(line -> !line.startsWith("#"))
                .toList();

        assertThat(common).hasSizeGreaterThanOrEqualTo(3000).allMatch(line -> line.length() >= 8);
        assertThat(common)
                .allMatch(password -> rules.objection(password, "somebody").isPresent());
        assertThat(rules.objection("PassWord", "somebody")).contains("password.common");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Tealwater2026",
                "tealwater!2026",
                "Teal Water 2026",
                "2026tealwater",
                "Ramkeeper1",
                "marama.k1987"
            })
    @Transactional
    @DisplayName("SEC-46 refuses the company's, the program's and the account's name with a year")
    void sec46RefusesContext(String password) {
        jdbc.sql("update company set name = 'Teal Water'").update();

        assertThat(rules.objection(password, "marama.k")).contains("password.context");
    }

    @Test
    @DisplayName("SEC-45 takes any characters and great length, refuses only what is short")
    void sec45TakesAnyCharacters() {
        assertThat(rules.objection("1234567", "x")).contains("password.short");
        assertThat(rules.objection("ünïcödé 🚰 pipe", "x")).isEmpty();
        assertThat(rules.objection("correct horse battery staple", "x")).isEmpty();
        assertThat(rules.objection("abcdefghijklmnop".repeat(8), "x")).isEmpty();
        assertThat(rules.objection("        ", "x")).contains("password.common");
        assertThat(rules.objection("x".repeat(201), "x")).contains("password.long");
    }
}
