/** Calls: somebody rings because the water stays away; what was advised and promised, and the visit it led to. */
@NullMarked
package app.ramkeeper.visits.calls;

import org.jspecify.annotations.NullMarked;
