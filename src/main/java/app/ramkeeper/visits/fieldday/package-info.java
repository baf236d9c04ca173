/** Who is out, until when, and who is back; and what was left to do that somebody has done. */
@NullMarked
package app.ramkeeper.visits.fieldday;

import org.jspecify.annotations.NullMarked;
