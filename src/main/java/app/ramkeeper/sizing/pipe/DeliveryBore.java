package app.ramkeeper.sizing.pipe;

import app.ramkeeper.sizing.quantity.Flow;
import app.ramkeeper.sizing.quantity.Length;
import app.ramkeeper.sizing.quantity.Note;
import app.ramkeeper.sizing.quantity.Noted;

/** First choice of delivery bore from the flow alone; the friction of the real line decides. */
public final class DeliveryBore {

    private static final double[] UP_TO_L_MIN = {36, 60, 90, 234, 360};
    private static final double[] BORE_MM = {30, 40, 50, 80, 100};

    private DeliveryBore() {}

    /**
     * Nominal bore for a delivered flow.
     *
     * <p>Made for 6 to 360 l/min; outside a note says so and the nearest bore is given. Source: USAID Water for the World,
     * Technical Note RWS.4.D.5, Designing a hydraulic ram pump, delivery pipe table. Worked value: 50 mm for 90 l/min, 80
     * mm for 91.
     */
    public static Noted<Length> forFlow(Flow delivered) {
        double flow = delivered.litresPerMinute();
        int i = 0;
        // the table is in whole litres: a hair above its step is still the step
        while (i < UP_TO_L_MIN.length - 1 && flow > UP_TO_L_MIN[i] + 1e-9) {
            i++;
        }
        Length bore = Length.ofMillimetres(BORE_MM[i]);
        boolean inside = flow >= 6 - 1e-9 && flow <= 360 + 1e-9;
        return inside
                ? Noted.of(bore)
                : Noted.of(bore, Note.outside("the delivery pipe table", "delivered flow", flow, 6, 360, "l/min"));
    }
}
