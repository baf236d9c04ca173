/** The online form by which a visit is recorded; it works without script. */
@NullMarked
package app.ramkeeper.visits.record;

import org.jspecify.annotations.NullMarked;
