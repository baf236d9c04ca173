package app.ramkeeper.exchange.reading;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/** Refuses a line so long that reading it as one row would fill the memory. */
final class ShortLines extends FilterReader {

    private int line = 1;
    private int length;

    ShortLines(Reader in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        int c = super.read();
        count((char) c);
        return c;
    }

    @Override
    public int read(char[] buffer, int from, int most) throws IOException {
        int read = super.read(buffer, from, most);
        for (int i = from; i < from + read; i++) {
            count(buffer[i]);
        }
        return read;
    }

    private void count(char c) {
        if (c == '\n' || c == '\r') {
            line += c == '\n' ? 1 : 0;
            length = 0;
        } else if (++length > Limits.LINE) {
            throw Unreadable.broken(
                    "Line %d is longer than %,d characters; no row of a register is. Is this the right file?"
                            .formatted(line, Limits.LINE));
        }
    }
}
