/**
 * Whole installations: several pumps side by side, the search for a design, how sure its delivery is, and what an
 * install should read.
 *
 * <p>Start with {@link app.ramkeeper.sizing.design.Battery}, {@link app.ramkeeper.sizing.design.DesignSearch}, {@link
 * app.ramkeeper.sizing.design.DeliveryForecast} and {@link app.ramkeeper.sizing.design.ExpectedReadings}.
 */
@NullMarked
package app.ramkeeper.sizing.design;

import org.jspecify.annotations.NullMarked;
