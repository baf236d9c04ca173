/**
 * The delivery line: ground profile, pipe by stretch, head lines, pressure classes, air valves, drains and outlets.
 *
 * <p>A {@link app.ramkeeper.sizing.line.DeliveryLine} is what lies in the ground, a {@link
 * app.ramkeeper.sizing.line.LineLoad} what it has to carry, a {@link app.ramkeeper.sizing.line.LineResult} what comes of
 * it.
 */
@NullMarked
package app.ramkeeper.sizing.line;

import org.jspecify.annotations.NullMarked;
