package app.ramkeeper.exchange.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayName("FLT-26 text tables of all dialects")
class TextFileTests {

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"UTF-8", "windows-1252", "UTF-16LE", "UTF-16BE", "UTF-16"})
    void readsCharacterSets(String charset) throws IOException {
        var read = Tables.csv(
                folder, "Name;Ort\r\nČ".replace("Č", "É") + "tienne Brûlé;Föhn Gully\r\n", Charset.forName(charset));

        assertThat(read.heading()).containsExactly("Name", "Ort");
        assertThat(read.cells()).containsExactly(List.of("Étienne Brûlé", "Föhn Gully"));
    }

    @Test
    void takesOffTheByteOrderMark() throws IOException {
        var read = Tables.csv(folder, "\uFEFFName,Site\nA,B\n");

        assertThat(read.heading()).containsExactly("Name", "Site");
        assertThat(read.words()).contains("byte order mark").contains("commas");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '#',
            value = {";#semicolons", "','#commas", "'\t'#tabs", "|#upright bars"})
    void recognisesTheSeparator(String separator, String words) throws IOException {
        String text = "Reference,S,Note\nR1,12.5,x\nR2,7.5,y\n".replace(",", separator);
        var read = Tables.csv(folder, text.replace('.', separator.equals(",") ? '.' : ','));

        assertThat(read.words()).endsWith(words);
        assertThat(read.heading()).hasSize(3);
    }

    @Test
    void keepsLineEndsInQuotesAndCountsPhysicalLines() throws IOException {
        var read = Tables.csv(folder, "a,b\r\n\"first\r\nsecond\",2\r\n\r\n\"say \"\"no\"\"\",4\r\n");

        assertThat(read.rows())
                .containsExactly(new Row(2, List.of("first\nsecond", "2")), new Row(5, List.of("say \"no\"", "4")));
    }

    @Test
    void namesTheLineOfAnUnbalancedQuote() {
        refuses("a,b\n1,2\n3,\"open\n5,6\n", "line 3", "never closed");
    }

    @Test
    void namesTheLineOfAStrayQuote() {
        refuses("a,b\n1,2\n\"x\"y,2\n", "line 3", "middle of a cell");
    }

    @Test
    void refusesEmptyAndHeaderOnly() {
        refuses("", "empty");
        refuses("  \n\n", "empty");
        refuses("a,b\n", "no rows");
    }

    @Test
    @DisplayName("FLT-29 names the cell that holds NUL")
    void flt29NamesTheCellWithNul() {
        refuses("name,note\nx,ab\u0000c\n", "Line 2, column B", "control character");
    }

    @Test
    @DisplayName("FLT-28 takes direction controls out")
    void flt28TakesDirectionControlsOut() throws IOException {
        assertThat(Tables.csv(folder, "a,b\nx\u202Egpj.exe\u2066,1\n").cells())
                .containsExactly(List.of("xgpj.exe", "1"));
    }

    @Test
    @DisplayName("FLT-27 composes decomposed letters")
    void flt27ComposesLetters() throws IOException {
        assertThat(Tables.csv(folder, "a,b\nMa\u0304kara,1\n").cells()).containsExactly(List.of("M\u0101kara", "1"));
    }

    @Test
    @DisplayName("FLT-22 takes the guard of a would-be formula off again")
    void flt22TakesTheGuardOff() throws IOException {
        assertThat(Tables.csv(folder, "a,b,c,d\n'=1+1,'-x,'@y,-5\n").cells())
                .containsExactly(List.of("=1+1", "-x", "@y", "-5"));
    }

    @Test
    void refusesAMillionColumnsAndTooManyRows() {
        refuses("a,b\n" + ",".repeat(1_000_000) + "\n", "longer than");
        refuses("a" + ",b".repeat(300) + "\n1\n", "more than 200 columns");
        refuses("a,b\n" + "1,2\n".repeat(100_001), "more than 100,000 rows");
        refuses("a,b\n\"" + "x\n".repeat(5000) + "\",1\n", "Line 2, column A", "never closed");
    }

    private void refuses(String text, String... words) {
        assertThatExceptionOfType(Unreadable.class)
                .isThrownBy(() -> Tables.csv(folder, text, StandardCharsets.UTF_8))
                .satisfies(refused -> assertThat(refused.sentence()).contains(words));
    }
}
