/**
 * Measures, checks and notes that every part of sizing speaks in.
 *
 * <p>All are small immutable values in SI; the named factories and getters do other units. Impossible values are refused
 * by {@link app.ramkeeper.sizing.quantity.ImpossibleInput}, values outside a formula's range travel on with a
 * {@link app.ramkeeper.sizing.quantity.Note}.
 */
@NullMarked
package app.ramkeeper.sizing.quantity;

import org.jspecify.annotations.NullMarked;
