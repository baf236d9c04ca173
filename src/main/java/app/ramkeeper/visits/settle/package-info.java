/** The office's list of reports that could not be placed. */
@NullMarked
package app.ramkeeper.visits.settle;

import org.jspecify.annotations.NullMarked;
