/**
 * Hydraulics of a ram pump installation: plain Java, SI inside, usable alone.
 *
 * <p>Start in {@code quantity} for the measures, {@code water} for the fluid and the place, {@code source} for what
 * there is and what is wanted, {@code pipe} for friction, ratings and surge, {@code line} for the delivery line and
 * {@code vessel} for the pressure vessel. Formulas and their sources are listed in {@code src/docs/sizing.md}.
 */
@ApplicationModule(type = ApplicationModule.Type.OPEN)
@NullMarked
package app.ramkeeper.sizing;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
