/**
 * Pressure waves: how fast they run, how high they go, what a pump builds up against a shut delivery, and pulses.
 */
@NullMarked
package app.ramkeeper.sizing.surge;

import org.jspecify.annotations.NullMarked;
