package app.ramkeeper.exchange.reading;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Recognises how a text table is written. Text that is not UTF-8 or UTF-16 is taken for Windows-1252. */
public final class Dialects {

    static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final char[] SEPARATORS = {';', ',', '\t', '|'};
    private static final int SAMPLE_LINES = 40;
    private static final int SAMPLE_CHARS = 200_000;

    private Dialects() {}

    /**
     * Recognises a file; what the person has said holds over what is seen.
     *
     * @param charset the name of the character set, or null
     * @param separator the separator, or null
     */
    public static Dialect recognise(Path file, @Nullable String charset, @Nullable Character separator)
            throws IOException {
        byte[] head = head(file);
        Charset mark = byteOrderMark(head);
        Charset chosen = charset != null ? Charset.forName(charset) : mark != null ? mark : guess(file, head);
        int skip = chosen.equals(mark) ? (chosen.equals(StandardCharsets.UTF_8) ? 3 : 2) : 0;
        Dialect dialect = new Dialect(chosen, skip, ',');
        return new Dialect(chosen, skip, separator != null ? separator : separator(file, dialect));
    }

    /** Opens the text behind any byte order mark. */
    static Reader open(Path file, Dialect dialect) throws IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(file));
        in.skipNBytes(dialect.skip());
        return new InputStreamReader(
                in,
                dialect.charset()
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPLACE)
                        .onUnmappableCharacter(CodingErrorAction.REPLACE));
    }

    private static byte[] head(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(4096);
        }
    }

    private static @Nullable Charset byteOrderMark(byte[] head) {
        if (head.length >= 3 && head[0] == (byte) 0xEF && head[1] == (byte) 0xBB && head[2] == (byte) 0xBF) {
            return StandardCharsets.UTF_8;
        }
        if (head.length >= 2 && head[0] == (byte) 0xFF && head[1] == (byte) 0xFE) {
            return StandardCharsets.UTF_16LE;
        }
        return head.length >= 2 && head[0] == (byte) 0xFE && head[1] == (byte) 0xFF ? StandardCharsets.UTF_16BE : null;
    }

    private static Charset guess(Path file, byte[] head) throws IOException {
        int evenZeros = 0;
        int oddZeros = 0;
        for (int i = 0; i < head.length; i++) {
            evenZeros += head[i] == 0 && i % 2 == 0 ? 1 : 0;
            oddZeros += head[i] == 0 && i % 2 == 1 ? 1 : 0;
        }
        if (oddZeros > head.length / 4) {
            return StandardCharsets.UTF_16LE;
        }
        if (evenZeros > head.length / 4) {
            return StandardCharsets.UTF_16BE;
        }
        return isUtf8(file) ? StandardCharsets.UTF_8 : WINDOWS;
    }

    private static boolean isUtf8(Path file) throws IOException {
        char[] buffer = new char[8192];
        try (Reader strict = new InputStreamReader(
                Files.newInputStream(file),
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT))) {
            while (strict.read(buffer) >= 0) {}
            return true;
        } catch (CharacterCodingException other) {
            return false;
        }
    }

    /** The separator that most lines have, in the most even number; a comma when none stands out. */
    private static char separator(Path file, Dialect dialect) throws IOException {
        List<int[]> counts = countPerLine(file, dialect);
        char best = ',';
        double bestScore = 0;
        for (int s = 0; s < SEPARATORS.length; s++) {
            int first = counts.isEmpty() ? 0 : counts.get(0)[s];
            int column = s;
            long same = counts.stream().filter(line -> line[column] == first).count();
            double score = first == 0 ? 0 : (double) same / counts.size() + Math.min(first, 50) / 1000.0;
            if (score > bestScore) {
                best = SEPARATORS[s];
                bestScore = score;
            }
        }
        return best;
    }

    private static List<int[]> countPerLine(Path file, Dialect dialect) throws IOException {
        List<int[]> lines = new ArrayList<>();
        int[] line = new int[SEPARATORS.length];
        boolean quoted = false;
        boolean blank = true;
        try (Reader in = Dialects.open(file, dialect)) {
            int c = in.read();
            for (int seen = 0; c >= 0 && seen < SAMPLE_CHARS && lines.size() < SAMPLE_LINES; seen++, c = in.read()) {
                quoted ^= c == '"';
                if (c == '\n' && !quoted) {
                    if (!blank) {
                        lines.add(line);
                    }
                    line = new int[SEPARATORS.length];
                    blank = true;
                } else if (!quoted) {
                    blank &= Character.isWhitespace(c);
                    count(line, (char) c);
                }
            }
        }
        if (!blank) {
            lines.add(line);
        }
        return lines;
    }

    private static void count(int[] line, char c) {
        for (int s = 0; s < SEPARATORS.length; s++) {
            line[s] += SEPARATORS[s] == c ? 1 : 0;
        }
    }
}
