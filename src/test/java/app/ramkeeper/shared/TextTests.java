package app.ramkeeper.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextTests {

    @Test
    void keepsWordsAccentsAndLineEnds() {
        assertThat(Text.clean("  Ōhau – gate\r\ncode by phone\tonly\r ")).isEqualTo("Ōhau – gate\ncode by phone\tonly");
    }

    @Test
    @DisplayName("FLT-28 removes direction controls that reorder neighbouring text")
    void removesDirectionControls() {
        assertThat(Text.clean("abc\u202Edef\u2066ghi\u2069")).isEqualTo("abcdefghi");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a\u0000b", "\u0007", "\u001B[31m", "\u0085"})
    @DisplayName("FLT-29 refuses control characters")
    void refusesControlCharacters(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Text.clean(text))
                .withMessageContaining("control character");
    }
}
