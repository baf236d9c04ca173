package app.ramkeeper.sizing.quantity;

/**
 * One rule applied: which, how it stands, with the number and its limit.
 *
 * @param rule the name of the rule
 * @param verdict how the number stands
 * @param number the number found
 * @param limit the limit it is held against
 * @param unit unit of both
 * @param sentence the outcome in a sentence
 */
public record Check(String rule, Verdict verdict, double number, double limit, String unit, String sentence) {

    /** Share of the limit within which a number that holds is still called close. */
    public static final double CLOSE_SHARE = 0.1;

    /** The number must not be more than the limit; the last tenth below it is close. Worked value: 9 of at most 10 holds, 9.5 is close, 11 fails. */
    public static Check atMost(String rule, double number, double limit, String unit) {
        Verdict verdict = !(number <= limit)
                ? Verdict.FAILS
                : number > limit - CLOSE_SHARE * Math.abs(limit) ? Verdict.CLOSE : Verdict.HOLDS;
        return new Check(rule, verdict, number, limit, unit, sentence(rule, verdict, number, "at most", limit, unit));
    }

    /** The number must not be less than the limit; the first tenth above it is close. Worked value: 11 of at least 10 holds, 10.5 is close, 9 fails. */
    public static Check atLeast(String rule, double number, double limit, String unit) {
        Verdict verdict = !(number >= limit)
                ? Verdict.FAILS
                : number < limit + CLOSE_SHARE * Math.abs(limit) ? Verdict.CLOSE : Verdict.HOLDS;
        return new Check(rule, verdict, number, limit, unit, sentence(rule, verdict, number, "at least", limit, unit));
    }

    /** The number must lie from low to high; the check names the end that is nearer or passed. */
    public static Check between(String rule, double number, double low, double high, String unit) {
        boolean nearLow = number < low || number <= high && number / low < high / number;
        return nearLow ? atLeast(rule, number, low, unit) : atMost(rule, number, high, unit);
    }

    /** The same outcome with more words after its sentence. */
    public Check because(String more) {
        return new Check(rule, verdict, number, limit, unit, sentence + " " + more);
    }

    private static String sentence(
            String rule, Verdict verdict, double number, String bound, double limit, String unit) {
        String outcome = switch (verdict) {
            case HOLDS -> "holds";
            case CLOSE -> "holds, but only just";
            case FAILS -> "fails";
        };
        return "%s %s: %s, %s %s."
                .formatted(rule, outcome, Numbers.text(number, unit), bound, Numbers.text(limit, unit));
    }
}
