package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class SecurityLogTests {

    @Test
    @DisplayName("SEC-77 a line cannot be forged: line ends, escapes and quotes are written out, length is cut")
    void sec77EscapesAndCuts() {
        String plain = SecurityLog.plain("eve\r\ntime=now event=sign-in result=passed \u001b[31m\"x\"\u2028");

        assertThat(plain).doesNotContain("\r", "\n", "\u001b", "\"", "\u2028").contains("\\u000d\\u000a", "\\u001b");
        assertThat(SecurityLog.plain("a".repeat(1_000_000))).hasSizeLessThan(130);
    }
}
