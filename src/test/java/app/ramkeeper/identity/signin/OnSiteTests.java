package app.ramkeeper.identity.signin;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;

class OnSiteTests {

    @ParameterizedTest
    @NullSource
    @ValueSource(
            strings = {
                "//evil.example",
                "https:evil.example",
                "https://evil.example/",
                "/\\evil.example",
                "/a\\b",
                "javascript:alert(1)",
                "/x\r\nSet-Cookie: a=b",
                "/\t/evil.example",
                "",
                "/sign-out"
            })
    @DisplayName("SEC-32 a way back that leaves the site becomes the first page")
    void sec32StaysOnSite(String wanted) {
        assertThat(OnSite.target(wanted)).isEqualTo("/");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/due?task=OVERHAUL&after=x", "/sites/4c1e/sheet"})
    @DisplayName("SEC-32 a way back on the site is kept")
    void sec32KeepsOwnPaths(String wanted) {
        assertThat(OnSite.target(wanted)).isEqualTo(wanted);
    }
}
