/**
 * How much water is wanted: people, stock and land by a table an office can change, peaks and storage.
 */
@NullMarked
package app.ramkeeper.sizing.demand;

import org.jspecify.annotations.NullMarked;
