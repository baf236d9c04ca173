/** Runs every outside reference case of {@code sizing/hydraulics.csv} against the library. */
@NullMarked
package app.ramkeeper.sizing.reference;

import org.jspecify.annotations.NullMarked;
