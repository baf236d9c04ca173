package app.ramkeeper.sizing.vessel;

import app.ramkeeper.sizing.quantity.Head;
import app.ramkeeper.sizing.quantity.ImpossibleInput;
import app.ramkeeper.sizing.quantity.Numbers;
import app.ramkeeper.sizing.quantity.Pressure;
import app.ramkeeper.sizing.quantity.Require;

/**
 * An office's rule for the pre-charge of a bladder vessel.
 *
 * @param below how much less than the static delivery pressure, in the usual range of lift
 * @param usualFrom least lift of the usual range
 * @param usualTo greatest lift of the usual range
 * @param shareElsewhere share of the static pressure outside the usual range where the maker says nothing, 0.5 to 0.95
 * @param refuseBelow least lift that is answered at all
 * @param refuseAbove greatest lift that is answered at all
 */
public record PreChargeRule(
        Pressure below, Head usualFrom, Head usualTo, double shareElsewhere, Head refuseBelow, Head refuseAbove) {

    /** Refuses limits out of order and shares outside their range. */
    public PreChargeRule {
        Require.notNegative("amount below static", below.pascals(), "Pa");
        Require.within("share of static", shareElsewhere, 0.5, 0.95, "");
        boolean ordered = refuseBelow.metres() > 0
                && refuseBelow.compareTo(usualFrom) <= 0
                && usualFrom.compareTo(usualTo) <= 0
                && usualTo.compareTo(refuseAbove) <= 0;
        if (!ordered) {
            throw new ImpossibleInput(
                    "limits of lift",
                    Numbers.sentence(
                            "%s, %s, %s, %s m",
                            refuseBelow.metres(), usualFrom.metres(), usualTo.metres(), refuseAbove.metres()),
                    "rising from above 0: refuse below, usual from, usual to, refuse above");
        }
    }

    /** Half a bar less for 20 to 80 m, else 0.85 of static, nothing outside 5 to 200 m; common practice, no source. */
    public static PreChargeRule usual() {
        return new PreChargeRule(
                Pressure.ofBar(0.5), Head.ofMetres(20), Head.ofMetres(80), 0.85, Head.ofMetres(5), Head.ofMetres(200));
    }
}
