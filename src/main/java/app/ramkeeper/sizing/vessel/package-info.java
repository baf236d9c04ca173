/**
 * The pressure vessel: what to charge it to, what warmth and height do to a charge, how large it must be, what it gives.
 */
@NullMarked
package app.ramkeeper.sizing.vessel;

import org.jspecify.annotations.NullMarked;
