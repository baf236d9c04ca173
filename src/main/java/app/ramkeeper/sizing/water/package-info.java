/**
 * The water itself and the place it is in: density, viscosity, vapour pressure, elasticity, air pressure, gravity.
 */
@NullMarked
package app.ramkeeper.sizing.water;

import org.jspecify.annotations.NullMarked;
