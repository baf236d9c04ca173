package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletRequest;

class CameFromTests {

    @Test
    void leadsBackToThePageOfTheForm() {
        assertThat(CameFrom.page(post("http://localhost/rounds/2026-11-30?x=a%20b")))
                .isEqualTo("/rounds/2026-11-30?x=a%20b");
        assertThat(CameFrom.page(post("http://localhost/calls"))).isEqualTo("/calls");
    }

    @Test
    void isNoLinkToThePageItself() {
        MockHttpServletRequest again = new MockHttpServletRequest("GET", "/calls");
        again.addHeader("Referer", "http://localhost/calls");
        assertThat(CameFrom.page(again)).isNull();
        assertThat(CameFrom.page(new MockHttpServletRequest("GET", "/calls"))).isNull();
    }

    @DisplayName("SEC-32 leads to no other host and no script")
    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://elsewhere.example/rounds",
                "http://localhost//elsewhere.example",
                "javascript:alert(1)",
                "http://localhost/link/abc",
                "http://localhost/sign-in",
                "http://localhost/a b",
                "nonsense"
            })
    void leadsNowhereElse(String referer) {
        assertThat(CameFrom.page(post(referer))).isNull();
    }

    private static MockHttpServletRequest post(String referer) {
        MockHttpServletRequest request = new MockHttpServletRequest("POST", "/calls");
        request.addHeader("Referer", referer);
        return request;
    }
}
