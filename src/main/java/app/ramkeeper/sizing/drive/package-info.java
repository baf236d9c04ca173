/**
 * The drive pipe: rules for its length, bore for the flow, velocity and wall.
 */
@NullMarked
package app.ramkeeper.sizing.drive;

import org.jspecify.annotations.NullMarked;
