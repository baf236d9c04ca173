package app.ramkeeper.sizing.drive;

import app.ramkeeper.sizing.quantity.Check;
import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Require;

/**
 * A rule for the length of the drive pipe. The rules by fall disagree with each other; a result says which was used.
 */
public enum LengthRule {

    /** 150 to 1000 bores; attributed to Calvert, N. G. 1957, The hydraulic ram, The Engineer. */
    BORES_150_TO_1000("Drive pipe length, 150 to 1000 bores", 150, 1000, false),

    /** 2 to 4 falls; a design worksheet for 10 m of fall. */
    FALLS_2_TO_4("Drive pipe length, 2 to 4 falls", 2, 4, true),

    /** 5 to 12 falls; a rural extension article. */
    FALLS_5_TO_12("Drive pipe length, 5 to 12 falls", 5, 12, true);

    private final String words;
    private final double least;
    private final double most;
    private final boolean byFall;

    LengthRule(String words, double least, double most, boolean byFall) {
        this.words = words;
        this.least = least;
        this.most = most;
        this.byFall = byFall;
    }

    /** Name in sentences. */
    public String words() {
        return words;
    }

    /** Shortest allowed, m. Worked value: 7.5 m by the rule of bores for 50 mm. */
    public double shortestM(Length bore, Head fall) {
        return least * base(bore, fall);
    }

    /** Longest allowed, m. Worked value: 36 m by 5 to 12 falls for a fall of 3 m. */
    public double longestM(Length bore, Head fall) {
        return most * base(bore, fall);
    }

    /** The rule applied to a pipe. Worked value: 6 m of 50 mm fails the rule of bores, 12 m holds. */
    public Check check(Length length, Length bore, Head fall) {
        return Check.between(words, length.metres(), shortestM(bore, fall), longestM(bore, fall), "m");
    }

    private double base(Length bore, Head fall) {
        return byFall ? Require.positive("fall", fall.metres(), "m") : Require.positive("bore", bore.metres(), "m");
    }
}
