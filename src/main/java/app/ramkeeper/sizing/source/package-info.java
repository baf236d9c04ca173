/**
 * How much water there is: bucket and watch, notches, weirs, floats, each with its uncertainty, and the dry season.
 */
@NullMarked
package app.ramkeeper.sizing.source;

import org.jspecify.annotations.NullMarked;
