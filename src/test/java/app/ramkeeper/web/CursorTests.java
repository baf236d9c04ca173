package app.ramkeeper.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;

class CursorTests {

    @Test
    void comesBackAsItWent() {
        assertThat(Cursor.read(Cursor.of("2026-11-24", "Ōhau, upper", 7), 3))
                .hasValueSatisfying(keys -> assertThat(keys).containsExactly("2026-11-24", "Ōhau, upper", "7"));
    }

    @ParameterizedTest
    @NullSource
    @ValueSource(strings = {"", "%%%", "AAAA", "' or 1=1 --", "YQBi"})
    void startsAtTheFirstPageWhenBroken(String cursor) {
        assertThat(Cursor.read(cursor, 2)).isEmpty();
    }
}
