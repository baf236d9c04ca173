/**
 * Pipes: what they are made of, what they lose by friction, what pressure and surge they bear, drive pipe rules.
 */
@NullMarked
package app.ramkeeper.sizing.pipe;

import org.jspecify.annotations.NullMarked;
