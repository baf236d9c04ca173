package app.ramkeeper.sizing.demand;

import app.ramkeeper.sizing.quantity.Require;

/**
 * Land to be watered.
 *
 * @param areaM2 area, m2, 0 or more
 * @param millimetresPerDay what the crop needs, mm/day (evapotranspiration less rain), 0 to 20
 * @param applied share of the water that reaches the roots, more than 0 to 1 (drip 0.9, sprinkler 0.75: FAO Irrigation and
 *     drainage paper 24, from memory)
 */
public record Irrigation(double areaM2, double millimetresPerDay, double applied) {

    /** Refuses values outside their range. */
    public Irrigation {
        Require.notNegative("irrigated area", areaM2, "m2");
        Require.within("crop need", millimetresPerDay, 0, 20, "mm/day");
        Require.within("share applied", applied, 0.1, 1, "");
    }

    /** Litres a day; 1 mm on 1 m2 is 1 l. Worked value: 500 l for 100 m2, 4 mm/day, 0.8. */
    public double litresPerDay() {
        return areaM2 * millimetresPerDay / applied;
    }
}
